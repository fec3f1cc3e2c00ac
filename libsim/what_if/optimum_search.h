// The largest value of a function of a few shares: the only door to the optimiser.
#pragma once

#include <functional>
#include <vector>

namespace fillside {

/// Shares, each from 0 to 1.
using Shares = std::vector<double>;

struct SearchLimits {
  int look_round = 30;   ///< values looked at all over the room
  int climb = 20;        ///< and then from the best of them
  double enough = 1e30;  ///< stops at a value that is as good
};

struct LargestFound {
  Shares at;
  double value;
};

/// Divides the room into ever smaller boxes, the promising first (Jones, Perttunen and Stuckman 1993, in
/// Gablonsky and Kelley's locally biased form, 2001), then climbs from the best place with a quadratic model
/// (Powell, "The BOBYQA algorithm", 2009) or, with one share only, a simplex (Nelder and Mead 1965).
/// Deterministic. What `value` throws comes out again. Asserts at least one share.
LargestFound find_largest(std::size_t shares, const std::function<double(const Shares&)>& value,
                          const SearchLimits& limits);

}  // namespace fillside
