#include "libsim/geometry/scatter.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/space.h"
#include "libsim/geometry/dealt.h"

namespace fillside {
namespace {

constexpr std::uint64_t kCandidates = 24;

double nearest_m(const std::vector<Eigen::Vector2d>& places, const Eigen::Vector2d& candidate) {
  double least_m = 1e30;
  for (const Eigen::Vector2d& place : places) least_m = std::min(least_m, (place - candidate).norm());
  return least_m;
}

}  // namespace

std::vector<Eigen::Vector2d> scattered(int count, double reach_m, double apart_m, std::uint64_t seed) {
  std::vector<Eigen::Vector2d> places;
  for (std::uint64_t i = 0; i < static_cast<std::uint64_t>(count); ++i) {
    Eigen::Vector2d best = Eigen::Vector2d::Zero();
    double farthest_m = -1.0;
    for (std::uint64_t k = 0; k < kCandidates; ++k) {
      const std::uint64_t at = 2 * (kCandidates * i + k);
      const double angle = 2.0 * kPi * dealt(seed, at), from_m = reach_m * std::sqrt(dealt(seed, at + 1));
      const Eigen::Vector2d candidate = from_m * Eigen::Vector2d(std::cos(angle), std::sin(angle));
      const double off_m = nearest_m(places, candidate);
      if (off_m > farthest_m) farthest_m = off_m, best = candidate;
    }
    if (farthest_m >= apart_m) places.push_back(best);
  }
  return places;
}

}  // namespace fillside
