// One drawn scattering event.
#pragma once

#include "libsim/base/colour.h"
#include "libsim/base/space.h"

namespace fillside {

/// How the light went on: spread over directions, mirrored exactly, or straight through without turning.
enum class Turn { spread, mirrored, straight };

struct Scattered {
  Direction to_source;          ///< local, away from the surface
  Rgb weight;                   ///< scattering x |cosine| / density, or the share divided by its probability
  double density_per_sr = 0.0;  ///< 0 for mirrored and straight
  Turn turn = Turn::spread;
};

}  // namespace fillside
