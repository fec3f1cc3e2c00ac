#include "libsim/geometry/lump.h"

#include <cassert>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/lathe.h"

namespace fillside {

Mesh lump(const LumpShape& shape) {
  assert(shape.rings >= 2 && shape.half.minCoeff() > 0.0);
  Profile profile;
  for (int i = 0; i <= shape.rings; ++i) {
    const double t = kPi * i / shape.rings;
    const bool on_axis = i == 0 || i == shape.rings;
    const double out = std::sin(t), up = -std::cos(t);
    const double reach = std::pow(std::pow(out, shape.squareness) + std::pow(std::abs(up), shape.squareness),
                                  -1.0 / shape.squareness);
    profile.push_back({on_axis ? 0.0 : reach * out, reach * up});
  }
  Mesh mesh = turned(profile, Plan{.squareness = shape.squareness, .segments = shape.segments});
  for (Point& corner : mesh.corners) corner = corner.cwiseProduct(shape.half);
  return mesh;
}

Eigen::Quaterniond tumbled(std::uint64_t seed) {
  const double share = dealt(seed, 1), one = 2.0 * kPi * dealt(seed, 2), two = 2.0 * kPi * dealt(seed, 3);
  const double a = std::sqrt(1.0 - share), b = std::sqrt(share);
  return {b * std::cos(two), a * std::sin(one), a * std::cos(one), b * std::sin(two)};
}

}  // namespace fillside
