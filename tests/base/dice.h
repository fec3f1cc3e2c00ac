// Plain independent random numbers for tests: no relation to the library's own sample numbers.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

#include "libsim/base/space.h"

namespace fillside::tests {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}

  /// In [0, 1). Not std::uniform_real_distribution, which differs between standard libraries.
  double throw_one() { return static_cast<double>(engine_() >> 11) * 0x1p-53; }

  /// Mean 0, standard deviation 1. Box and Muller, Ann. Math. Statist. 29(2), 1958.
  double throw_normal() {
    const double radius = std::sqrt(-2.0 * std::log(1.0 - throw_one()));
    return radius * std::cos(2.0 * std::numbers::pi * throw_one());
  }

  /// Uniform over the sphere: the height is uniform (Archimedes).
  Direction throw_direction() {
    const double z = 2.0 * throw_one() - 1.0, azimuth = 2.0 * std::numbers::pi * throw_one();
    const double r = std::sqrt(1.0 - z * z);
    return {r * std::cos(azimuth), r * std::sin(azimuth), z};
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace fillside::tests
