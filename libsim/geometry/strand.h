// A round strand along a line in space: a noodle, a stalk, a handle.
#pragma once

#include <span>

#include "libsim/geometry/mesh.h"

namespace fillside {

struct StrandPoint {
  Point middle;
  double radius_m;  ///< > 0
};

/// Closed at both ends by half rounds. The cross section is carried along without twisting, by the double
/// reflection of Wang, Juettler, Zheng and Liu, "Computation of Rotation Minimizing Frames", ACM Transactions
/// on Graphics 27(1), 2008, table I. Neighbouring points differ.
Mesh strand(std::span<const StrandPoint> line, int sides);

}  // namespace fillside
