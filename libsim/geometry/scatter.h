// Places strewn over a round surface, none close to another: croutons, chips, leaves.
#pragma once

#include <cstdint>
#include <vector>

#include <Eigen/Core>

namespace fillside {

/// At most `count` places within `reach_m` of the origin, each at least `apart_m` from all others; fewer
/// where no more fit. Of several candidates each time the one farthest from the rest: Mitchell, "Spectrally
/// Optimal Sampling for Distribution Ray Tracing", SIGGRAPH 1991, section 4 (best candidate).
std::vector<Eigen::Vector2d> scattered(int count, double reach_m, double apart_m, std::uint64_t seed);

}  // namespace fillside
