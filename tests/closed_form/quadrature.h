// Integrals over rectangles and intervals by the Gauss-Legendre rule, for references that are integrals of
// smooth functions. Abramowitz and Stegun, Handbook of Mathematical Functions (1964), eq. 25.4.29.
#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "libsim/geometry/rectangle.h"

namespace fillside::tests {

struct QuadratureNode {
  double at, weight;  ///< on -1..1
};

/// Roots of the Legendre polynomial by Newton's method from the usual first guess.
inline std::vector<QuadratureNode> gauss_legendre(int count) {
  std::vector<QuadratureNode> nodes;
  for (int i = 0; i < count; ++i) {
    double x = std::cos(kPi * (i + 0.75) / (count + 0.5)), slope = 1.0;
    for (int step = 0; step < 100; ++step) {
      double before = 1.0, value = x;
      for (int n = 2; n <= count; ++n) {
        const double next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
        before = value;
        value = next;
      }
      slope = count * (x * value - before) / (x * x - 1.0);
      x -= value / slope;
    }
    nodes.push_back({x, 2.0 / ((1.0 - x * x) * slope * slope)});
  }
  return nodes;
}

/// Integral of f over the rectangle's area, m2.
inline double integral_over(const Rectangle& rectangle, int nodes,
                            const std::function<double(const Point&)>& f) {
  const auto rule = gauss_legendre(nodes);
  double sum = 0.0;
  for (const auto& u : rule)
    for (const auto& v : rule) sum += u.weight * v.weight * f(rectangle.at(u.at, v.at));
  return 0.25 * rectangle.area_m2() * sum;
}

/// Illuminance at a flat receptor by a rectangle of radiance f(point, unit vector from the rectangle to the
/// receptor).
inline double illuminance_by(const Rectangle& rectangle, const Point& at, const Direction& faces, int nodes,
                             const std::function<double(const Point&, const Direction&)>& radiance) {
  return integral_over(rectangle, nodes, [&](const Point& q) {
    const Eigen::Vector3d way = at - q;
    const Direction onward = way.normalized();
    const double leaving = onward.dot(rectangle.normal()), arriving = -onward.dot(faces);
    return leaving > 0.0 && arriving > 0.0 ? radiance(q, onward) * leaving * arriving / way.squaredNorm()
                                           : 0.0;
  });
}

}  // namespace fillside::tests
