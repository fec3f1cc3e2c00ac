// A mesh cut along a level plane, as a glass is by the surface of what is in it.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

/// The same surface in triangles of which none crosses the height. Corners are no longer shared.
Mesh cut_at_height(const Mesh& mesh, double height_m);

}  // namespace fillside
