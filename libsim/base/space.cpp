#include "libsim/base/space.h"

#include <cmath>

namespace fillside {

Frame frame_around(const Direction& normal) {
  const double sign = std::copysign(1.0, normal.z());
  const double a = -1.0 / (sign + normal.z());
  const double b = normal.x() * normal.y() * a;
  return {{1.0 + sign * normal.x() * normal.x() * a, sign * b, -sign * normal.x()},
          {b, sign + normal.y() * normal.y() * a, -normal.y()},
          normal};
}

}  // namespace fillside
