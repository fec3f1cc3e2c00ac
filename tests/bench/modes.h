// The two ways in which maps and pictures are made.
#pragma once

#include <array>

#include "libsim/what_if/effort.h"
#include "tests/bench/goal_table.h"

namespace fillside::bench {

struct Mode {
  const char* name;
  bool unbiased;
};
inline constexpr std::array kModes{Mode{"cached", false}, Mode{"unbiased", true}};

inline Effort effort_in(const Mode& mode, double precision_stops, int threads = 0) {
  return {.precision = stops(precision_stops),
          .seconds = {},
          .seed = kSeed,
          .threads = threads,
          .unbiased = mode.unbiased};
}

}  // namespace fillside::bench
