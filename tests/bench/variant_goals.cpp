// Two variants of a set with shared numbers: how much less their difference scatters than with numbers of
// their own.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/transport/measure.h"
#include "tests/bench/error_ladder.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"

namespace fillside::bench {
namespace {

constexpr std::uint64_t kSeeds = 8;
constexpr std::uint32_t kSamples = 256;

double variance_of(const Estimate& mean) { return std::pow(mean.standard_error(), 2); }

/// Variance of a - b with numbers of their own, over that with shared ones.
double variance_ratio(const Scene& a, const Scene& b, const Meter& meter, Part part) {
  double own = 0.0, shared = 0.0;
  for (std::uint64_t i = 0; i < kSeeds; ++i) {
    const Budget budget{.samples = kSamples, .seed = kSeed + i};
    const Estimate in_a = part_of(measure(a, meter, budget), part),
                   in_b = part_of(measure(b, meter, budget), part);
    own += variance_of(in_a) + variance_of(in_b);
    shared += variance_of(in_a - in_b);
  }
  return own / shared;
}

GoalRow moved_row(double moved_m, double goal) {
  const Scene here = study_set(), there = study_set({.card_moved_m = moved_m});
  std::vector<double> totals, cards;
  std::string each;
  for (const Meter& meter : study_points()) {
    totals.push_back(variance_ratio(here, there, meter, Part::total));
    cards.push_back(variance_ratio(here, there, meter, Part::card));
    each += fmt::format("{}{:.1f}", each.empty() ? "" : ", ", totals.back());
  }
  const double middle = median(totals);
  return {fmt::format("A/B variance ratio, card moved {:.0f} cm, total, median of 4 points", 100.0 * moved_m),
          fmt::format(">= {}", goal),
          fmt::format("{} (the card's own light: {:.1f})", each, median(cards)),
          "own seeds = 1",
          fmt::format("{:.1f} x", middle),
          met_when(middle >= goal)};
}

}  // namespace

void variant_goals() { print_goals({moved_row(0.03, 8.0), moved_row(0.15, 3.0)}); }

}  // namespace fillside::bench
