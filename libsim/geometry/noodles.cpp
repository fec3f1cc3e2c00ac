// A nest of thick noodles, turned with a fork, with a few loose ends over it.
#include <algorithm>
#include <cmath>
#include <vector>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/strand.h"

namespace fillside {
namespace {

/// The strands lie side by side on a ring (a torus with an oval section) and advance by kShift of kLanes
/// lanes in each round. The two have no common divisor, so that all lanes are one long line, cut into pieces.
constexpr int kLanes = 35, kShift = 9, kStepsPerRound = 52, kSides = 8;
constexpr double kAcross = 0.185, kUp = 0.150;  ///< half the section's width and height, of the nest's width
constexpr double kStrand = 0.0125;              ///< a strand's radius, of the nest's width

struct Nest {
  double width_m;
  double relief_m;
  std::uint64_t seed;

  /// `round` and `tilt` are the angles along the ring and around its section; `lift` is in strand radii.
  Point at(double round, double tilt, double lift) const {
    const Eigen::Vector3d around(std::cos(round), std::sin(round), 0.0);
    const Eigen::Vector3d place =
        2.2 * around + 1.1 * Eigen::Vector3d(0.0, 0.0, std::sin(tilt)) + std::cos(tilt) * around;
    const double slack =
        1.0 + 0.075 * value_noise(1.3 * place, seed) + 0.02 * value_noise(3.1 * place, mixed(seed, 1));
    const double across = (kAcross * slack + lift * kStrand) * std::cos(tilt);
    const double up = (kUp * slack + lift * kStrand) * std::sin(tilt);
    const double ring = 0.5 - kAcross - kStrand;
    return width_m * ((ring + across) * around + Eigen::Vector3d(0.0, 0.0, up));
  }
  /// Where the one long line is after so many rounds.
  Point along(double rounds, double lift) const {
    const double tilt = 2.0 * kPi * rounds * kShift / kLanes;
    return at(2.0 * kPi * rounds, tilt, lift);
  }
  StrandPoint strand_point(const Point& middle, std::uint64_t own) const {
    const double thick_m =
        kStrand * width_m - 0.5 * relief_m * (1.0 - value_noise(middle / (0.09 * width_m), own));
    return {middle, thick_m};
  }
};

void add_nest(Item& item, const Nest& nest) {
  double from = 0.0;
  for (std::uint64_t piece = 0; from < kLanes - 0.2; ++piece) {
    const std::uint64_t own = mixed(nest.seed, piece);
    const double to = std::min(from + dealt(own, 1, 0.8, 2.4), static_cast<double>(kLanes) - 0.04);
    const int steps = std::max(3, static_cast<int>((to - from) * kStepsPerRound));
    std::vector<StrandPoint> line;
    for (int i = 0; i <= steps; ++i) {
      const double rounds = from + (to - from) * i / steps;
      const double loose = 0.5 + 0.5 * value_noise({3.0 * rounds, 0.5, 0.5}, own);
      line.push_back(nest.strand_point(nest.along(rounds, 0.5 * loose), own));
    }
    add_part(item, "body", strand(line, kSides));
    from = to + 0.035;
  }
}

/// Short strands that lie across the top, each in its own sector.
void add_loose_ends(Item& item, const Nest& nest) {
  constexpr int kEnds = 6, kSteps = 36;
  for (int end = 0; end < kEnds; ++end) {
    const std::uint64_t own = mixed(nest.seed, 500U + static_cast<std::uint64_t>(end));
    const double sector = 2.0 * kPi / kEnds, start = sector * (end + 0.1 * dealt(own, 1));
    const double from = dealt(own, 3, 0.30, 0.42) * kPi, to = dealt(own, 4, 0.55, 0.72) * kPi;
    std::vector<StrandPoint> line;
    for (int i = 0; i <= kSteps; ++i) {
      const double t = static_cast<double>(i) / kSteps;
      const double curl = 0.10 * std::sin(6.0 * t + 6.0 * dealt(own, 5));
      const double round = start + 0.72 * sector * t;
      line.push_back(nest.strand_point(nest.at(round, from + (to - from) * t + curl, 2.75), own));
    }
    add_part(item, "body", strand(line, kSides));
  }
}

}  // namespace

Item noodles_form(const ItemSize& size, std::uint64_t seed) {
  const Nest nest{size.width_m, std::min(size.relief_m, 0.25 * kStrand * size.width_m), seed};
  Item item;
  add_nest(item, nest);
  add_loose_ends(item, nest);
  return item;
}

}  // namespace fillside
