#include "libsim/geometry/inside.h"

#include <cmath>

namespace fillside {

double winding_number(const Mesh& mesh, const Point& point) {
  double solid_angle_sr = 0.0;
  for (const Triangle& t : mesh.triangles) {
    const Eigen::Vector3d a = mesh.corners[t[0]] - point, b = mesh.corners[t[1]] - point,
                          c = mesh.corners[t[2]] - point;
    const double far_a = a.norm(), far_b = b.norm(), far_c = c.norm();
    const double volume = a.dot(b.cross(c));
    const double spread = far_a * far_b * far_c + a.dot(b) * far_c + b.dot(c) * far_a + c.dot(a) * far_b;
    solid_angle_sr += 2.0 * std::atan2(volume, spread);
  }
  return solid_angle_sr / (4.0 * kPi);
}

bool is_inside(const Mesh& mesh, const Point& point) {
  const Bounds box = bounds_of(mesh);
  if ((point.array() < box.low.array()).any() || (point.array() > box.high.array()).any()) return false;
  return winding_number(mesh, point) > 0.5;
}

}  // namespace fillside
