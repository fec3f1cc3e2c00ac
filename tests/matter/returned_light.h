// All light that a surface with a lobe sends to a viewer when light comes evenly from everywhere above it.
#pragma once

#include <cmath>

#include "libsim/base/colour.h"
#include "tests/base/over_sphere.h"

namespace fillside::tests {

/// By the midpoint rule over half directions, d(source) = 4 (viewer . half) d(half): a narrow lobe is as wide
/// there from any angle as from square on. Rings widen like e^x from a fraction of the roughness to all that
/// is left. `scattering_cosine_per_sr` takes (to_viewer, to_source), either side of the surface.
template <class Scattering>
Rgb returned_light(const Scattering& scattering_cosine_per_sr, double roughness, double degrees) {
  constexpr int kRings = 300, kSpokes = 240;
  const Direction to_viewer = direction_at(degrees * kDegree, 0.0);
  const double stretch = std::log(1.0 + 0.5 * kPi / roughness);
  Rgb sum = grey(0.0);
  for (int i = 0; i < kRings; ++i) {
    const double grown = std::exp(stretch * (i + 0.5) / kRings), polar = roughness * (grown - 1.0);
    const double ring_sr = roughness * grown * stretch / kRings * std::sin(polar) * 2.0 * kPi / kSpokes;
    for (int j = 0; j < kSpokes; ++j) {
      const Direction half = direction_at(polar, 2.0 * kPi * (j + 0.5) / kSpokes);
      const Direction to_source = reflected(to_viewer, half);
      if (to_viewer.dot(half) > 0.0)
        sum += scattering_cosine_per_sr(to_viewer, to_source) * (4.0 * to_viewer.dot(half) * ring_sr);
    }
  }
  return sum;
}

}  // namespace fillside::tests
