// Rounded lumps: a crouton, an ice cube, a gherkin, a chip of chocolate.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

struct LumpShape {
  Eigen::Vector3d half;     ///< half its width, depth and height, metres
  double squareness = 2.0;  ///< 2 a ball or ellipsoid, 6 a block with rounded edges
  int segments = 32;        ///< a multiple of 4
  int rings = 16;           ///< even
};

/// Around the origin. Superellipsoid: Barr, "Superquadrics and Angle-Preserving Transformations", IEEE
/// Computer Graphics and Applications 1(1), 1981.
Mesh lump(const LumpShape& shape);

/// A turn as likely to be any other, fixed by the seed, for pieces that fell as they liked. Shoemake,
/// "Uniform Random Rotations", Graphics Gems III, 1992, section 2.
Eigen::Quaterniond tumbled(std::uint64_t seed);

}  // namespace fillside
