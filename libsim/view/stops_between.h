// How many stops lie between two lights.
#pragma once

#include <cmath>

#include "libsim/base/estimate.h"

namespace fillside {

/// log2 b - log2 a, replicate by replicate: how many stops more light b is. Swapping the two turns the sign
/// and changes nothing else, to the last bit.
inline Estimate stops_between(const Estimate& a, const Estimate& b) {
  return Estimate::combined(a, b, [](double from, double to) { return std::log2(to) - std::log2(from); });
}

}  // namespace fillside
