#include "libsim/geometry/rectangle.h"

#include <cmath>

namespace fillside {

Mesh mesh_of(const Rectangle& r) {
  return {{r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)}, {{0, 1, 2}, {0, 2, 3}}};
}

Rectangle rectangle_facing(const Point& centre, const Direction& faces, double width_m, double height_m) {
  const Direction upward = std::abs(faces.z()) > 0.999 ? Direction(0, 1, 0) : Direction(0, 0, 1);
  const Direction across = upward.cross(faces).normalized();
  return {centre, 0.5 * width_m * across, 0.5 * height_m * faces.cross(across)};
}

}  // namespace fillside
