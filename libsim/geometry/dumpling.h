// One pleated dumpling, for plates of them.
#pragma once

#include <cstdint>

#include "libsim/geometry/item.h"

namespace fillside {

/// Foot near z = 0, along x, its seam up and its bend away from the camera. `along` and `around` are the mesh
/// steps (`around` a multiple of 4).
Mesh dumpling_mesh(const ItemSize& size, std::uint64_t seed, int along, int around);

}  // namespace fillside
