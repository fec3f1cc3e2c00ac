#include "libsim/geometry/heap.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"

namespace fillside {
namespace {

constexpr int kPlacesTried = 12;
constexpr int kWays = 12;

/// Height of the centre of a ball that comes down at `place` and stops at the first touch.
double resting_height_m(const std::vector<Sphere>& heap, const Eigen::Vector2d& place, double radius_m,
                        double gap_m) {
  double height_m = radius_m + gap_m;
  for (const Sphere& other : heap) {
    const double apart_m = radius_m + other.radius_m + gap_m;
    const double off2 = (other.centre.head<2>() - place).squaredNorm();
    if (off2 < apart_m * apart_m)
      height_m = std::max(height_m, other.centre.z() + std::sqrt(apart_m * apart_m - off2));
  }
  return height_m;
}

/// Downhill in ever smaller steps: a pattern search, which needs no slope where two balls meet.
Point rolled_down(const std::vector<Sphere>& heap, Eigen::Vector2d place, double radius_m, double reach_m,
                  double gap_m) {
  double height_m = resting_height_m(heap, place, radius_m, gap_m);
  for (double step_m = 0.5 * radius_m; step_m > 1e-3 * radius_m;) {
    const Eigen::Vector2d from = place;
    for (int way = 0; way < kWays; ++way) {
      const double angle = 2.0 * kPi * way / kWays;
      const Eigen::Vector2d there = from + step_m * Eigen::Vector2d(std::cos(angle), std::sin(angle));
      if (there.norm() + radius_m > reach_m) continue;
      const double lower_m = resting_height_m(heap, there, radius_m, gap_m);
      if (lower_m < height_m - 1e-9 * radius_m) height_m = lower_m, place = there;
    }
    if (place == from) step_m *= 0.5;
  }
  return {place.x(), place.y(), height_m};
}

}  // namespace

std::vector<Sphere> heap_of(std::span<const double> radii_m, double reach_m, double gap_m,
                            std::uint64_t seed) {
  std::vector<Sphere> heap;
  for (std::size_t i = 0; i < radii_m.size(); ++i) {
    Sphere lowest{Point(0.0, 0.0, 1e30), radii_m[i]};
    for (std::uint64_t k = 0; k < kPlacesTried; ++k) {
      const std::uint64_t place = 2 * (kPlacesTried * i + k);
      const double from_axis_m = std::max(0.0, reach_m - radii_m[i]) * std::sqrt(dealt(seed, place));
      const double angle = 2.0 * kPi * dealt(seed, place + 1);
      const Eigen::Vector2d start = from_axis_m * Eigen::Vector2d(std::cos(angle), std::sin(angle));
      const Point rest = rolled_down(heap, start, radii_m[i], reach_m, gap_m);
      // Of equal heights the one nearer the axis: a heap grows from its middle.
      const double worth = rest.z() + 0.35 * rest.head<2>().norm();
      if (worth < lowest.centre.z() + 0.35 * lowest.centre.head<2>().norm()) lowest.centre = rest;
    }
    heap.push_back(lowest);
  }
  return heap;
}

}  // namespace fillside
