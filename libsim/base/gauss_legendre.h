// Gauss-Legendre quadrature: exact for polynomials up to degree 2N - 1 between two ends.
// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), equation 25.4.29.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace fillside {

struct QuadraturePoint {
  double at, weight;  ///< on -1..1; the weights add up to 2
};

/// The N roots of the Legendre polynomial P_N, by Newton's method from cos(pi (i - 1/4) / (N + 1/2)); P_N and
/// its derivative by the recurrence, Abramowitz and Stegun 22.7.10 and 22.8.5.
template <std::size_t N>
std::array<QuadraturePoint, N> gauss_legendre() {
  std::array<QuadraturePoint, N> points{};
  for (std::size_t i = 0; i < N; ++i) {
    double x = std::cos(std::numbers::pi * (static_cast<double>(i) + 0.75) / (static_cast<double>(N) + 0.5));
    double slope = 1.0;
    for (int step = 0; step < 8; ++step) {  // quadratic convergence: four are enough for double precision
      double p = 1.0, before = 0.0;
      for (std::size_t k = 1; k <= N; ++k) {
        const double n = static_cast<double>(k), next = ((2.0 * n - 1.0) * x * p - (n - 1.0) * before) / n;
        before = p, p = next;
      }
      slope = static_cast<double>(N) * (x * p - before) / (x * x - 1.0);
      x -= p / slope;
    }
    points[i] = {x, 2.0 / ((1.0 - x * x) * slope * slope)};
  }
  return points;
}

/// Integral of f from `from` to `to`.
template <std::size_t N, class F>
double integrated(const std::array<QuadraturePoint, N>& rule, double from, double to, const F& f) {
  const double half = 0.5 * (to - from), middle = 0.5 * (to + from);
  double sum = 0.0;
  for (const QuadraturePoint& point : rule) sum += point.weight * f(middle + half * point.at);
  return sum * half;
}

}  // namespace fillside
