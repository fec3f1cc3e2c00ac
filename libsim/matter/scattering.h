// One drawn scattering event.
#pragma once

#include "libsim/base/colour.h"
#include "libsim/base/space.h"

namespace fillside {

/// How the light went on: spread over directions, mirrored exactly, or straight through without turning (bent
/// by refraction at most, which shadow rays take no notice of).
enum class Turn { spread, mirrored, straight };

struct Scattered {
  Direction to_source;          ///< local, away from the surface
  Rgb weight;                   ///< scattering x |cosine| / density, or the share divided by its probability
  double density_per_sr = 0.0;  ///< 0 for mirrored and straight
  Turn turn = Turn::spread;
  /// What refraction makes of radiance without loss: (index on the viewer's side / on the source's)^2.
  /// Nicodemus, "Radiance", American Journal of Physics 31, 1963 (from memory). Paths multiply by it;
  /// roulette does not mind it.
  double concentration = 1.0;
};

}  // namespace fillside
