#include "libsim/geometry/nearness.h"

#include <algorithm>
#include <cmath>

namespace fillside {

Point nearest_on_triangle(const Point& p, const Point& a, const Point& b, const Point& c) {
  const Eigen::Vector3d ab = b - a, ac = c - a, ap = p - a, bp = p - b, cp = p - c;
  const double d1 = ab.dot(ap), d2 = ac.dot(ap), d3 = ab.dot(bp), d4 = ac.dot(bp), d5 = ab.dot(cp),
               d6 = ac.dot(cp);
  // The regions before a corner, before an edge, and over the face, in this order.
  if (d1 <= 0.0 && d2 <= 0.0) return a;
  if (d3 >= 0.0 && d4 <= d3) return b;
  if (d6 >= 0.0 && d5 <= d6) return c;
  const double vc = d1 * d4 - d3 * d2, vb = d5 * d2 - d1 * d6, va = d3 * d6 - d5 * d4;
  if (vc <= 0.0 && d1 >= 0.0 && d3 <= 0.0) return a + d1 / (d1 - d3) * ab;
  if (vb <= 0.0 && d2 >= 0.0 && d6 <= 0.0) return a + d2 / (d2 - d6) * ac;
  if (va <= 0.0 && d4 >= d3 && d5 >= d6) return b + (d4 - d3) / ((d4 - d3) + (d5 - d6)) * (c - b);
  return a + (vb * ab + vc * ac) / (va + vb + vc);
}

double distance_m(const Mesh& mesh, const Point& point) {
  double least2 = 1e60;
  for (const Triangle& t : mesh.triangles) {
    const Point nearest =
        nearest_on_triangle(point, mesh.corners[t[0]], mesh.corners[t[1]], mesh.corners[t[2]]);
    least2 = std::min(least2, (nearest - point).squaredNorm());
  }
  return std::sqrt(least2);
}

}  // namespace fillside
