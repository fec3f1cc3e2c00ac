// Integrals over all directions by the midpoint rule in polar angle and azimuth: an opinion of its own,
// beside whatever the library draws or integrates. The horizon falls on a grid line when `rings` is even.
#pragma once

#include <cmath>

#include "libsim/base/space.h"

namespace fillside::tests {

inline Direction direction_at(double polar_rad, double azimuth_rad) {
  return {std::sin(polar_rad) * std::cos(azimuth_rad), std::sin(polar_rad) * std::sin(azimuth_rad),
          std::cos(polar_rad)};
}

/// Sum of f(direction) dω, where dω is the solid angle of the direction's grid cell.
template <class Value, class F>
Value over_sphere(Value sum, const F& f, int rings = 1000, int spokes = 1000) {
  const double ring = kPi / rings, spoke = 2.0 * kPi / spokes;
  for (int i = 0; i < rings; ++i) {
    const double solid_angle_sr = (std::cos(i * ring) - std::cos((i + 1) * ring)) * spoke;
    for (int j = 0; j < spokes; ++j)
      sum += f(direction_at((i + 0.5) * ring, (j + 0.5) * spoke)) * solid_angle_sr;
  }
  return sum;
}

}  // namespace fillside::tests
