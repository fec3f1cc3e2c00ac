// A thin, curled leaf with its ribs.
#pragma once

#include <cstdint>

#include "libsim/geometry/mesh.h"

namespace fillside {

struct LeafShape {
  double length_m, width_m;
  double thickness_m;     ///< between its faces
  double relief_m = 0.0;  ///< swell of the blade between its ribs
  double cup = 0.15;      ///< rise of the edges over the middle, of the width
  double arch = 0.1;      ///< rise of the middle over both ends, of the length; negative: the tip turns up
  int rows = 40, columns = 20;
};

/// From its base at the origin along +x, upper face up.
Mesh leaf(const LeafShape& shape, std::uint64_t seed);

}  // namespace fillside
