// Numbers dealt by a seed, for things that differ from piece to piece: always the same for the same address.
#pragma once

#include <cstdint>

#include "libsim/base/sample_numbers.h"

namespace fillside {

/// In [0, 1).
inline double dealt(std::uint64_t seed, std::uint64_t index) {
  return static_cast<double>(mixed(seed, index) >> 11) / 9007199254740992.0;  // 2^53
}

/// In [low, high).
inline double dealt(std::uint64_t seed, std::uint64_t index, double low, double high) {
  return low + (high - low) * dealt(seed, index);
}

}  // namespace fillside
