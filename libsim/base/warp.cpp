#include "libsim/base/warp.h"

#include <algorithm>
#include <cmath>

namespace fillside {

PointInDisc draw_disc(double u, double v) {
  const double a = 2.0 * u - 1.0, b = 2.0 * v - 1.0;
  if (a == 0.0 && b == 0.0) return {0.0, 0.0};
  const bool wide = a * a > b * b;
  const double radius = wide ? a : b;
  const double angle = wide ? kPi / 4.0 * (b / a) : kPi / 2.0 - kPi / 4.0 * (a / b);
  return {radius * std::cos(angle), radius * std::sin(angle)};
}

Eigen::Vector3d draw_cosine_hemisphere(double u, double v) {
  const auto [x, y] = draw_disc(u, v);
  return {x, y, std::sqrt(std::max(0.0, 1.0 - x * x - y * y))};
}

double density_of_cosine_hemisphere_per_sr(double cosine) { return std::max(0.0, cosine) / kPi; }

Eigen::Vector3d draw_cardioid(double u, double v) {
  // The share below c is ((1 + c) / 2)^2; inverted.
  const double cosine = 2.0 * std::sqrt(u) - 1.0;
  const double sine = std::sqrt(std::max(0.0, 1.0 - cosine * cosine));
  return {sine * std::cos(2.0 * kPi * v), sine * std::sin(2.0 * kPi * v), cosine};
}

double density_of_cardioid_per_sr(double cosine) { return (1.0 + cosine) / (4.0 * kPi); }

PointInDisc draw_triangle(double u, double v) {
  if (v > u) {
    u *= 0.5;
    v -= u;
  } else {
    v *= 0.5;
    u -= v;
  }
  return {u, v};
}

}  // namespace fillside
