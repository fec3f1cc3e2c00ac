// The two ways in which maps and pictures are made.
#pragma once

#include "libsim/what_if/effort.h"
#include "tests/bench/goal_table.h"

namespace fillside::bench {

struct Mode {
  const char* name;
  bool unbiased;
};

/// The default and, where there is one, the other.
template <class SomeEffort = Effort>
std::vector<Mode> modes() {
  if constexpr (requires(SomeEffort effort) { effort.unbiased; })
    return {{"cached", false}, {"unbiased", true}};
  else
    return {{"unbiased", true}};
}

template <class SomeEffort = Effort>
SomeEffort effort_in(const Mode& mode, double precision_stops) {
  SomeEffort effort{.precision = stops(precision_stops), .seconds = {}, .seed = kSeed};
  if constexpr (requires { effort.unbiased; }) effort.unbiased = mode.unbiased;
  return effort;
}

}  // namespace fillside::bench
