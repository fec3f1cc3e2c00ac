// Meter points: time to a wanted error, and against the textbook walk at the same points.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tests/bench/error_ladder.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"

namespace fillside::bench {
namespace {

constexpr std::uint64_t kTextbookSamples = 1'000'000;
constexpr double kFine = 1e-3, kRough = 1e-2, kCompareAt_s = 0.1, kOutOfReach_s = 6.0;

struct AtPoint {
  std::string name;
  std::vector<Rung> ladder;
  Rung textbook;

  /// The rung nearest to the time at which both are compared.
  const Rung& compared() const {
    return *std::ranges::min_element(
        ladder, {}, [](const Rung& r) { return std::abs(std::log(r.seconds / kCompareAt_s)); });
  }
  double times_quicker() const { return seconds_to(textbook, compared().error) / compared().seconds; }
};

std::vector<AtPoint> card_at_points(const Scene& scene) {
  std::vector<AtPoint> points;
  for (const Meter& meter : study_points())
    points.push_back({meter.name, climb(scene, meter, Part::card, kFine, kOutOfReach_s),
                      textbook(scene, meter, kTextbookSamples)[0]});
  return points;
}

GoalRow time_row(const std::vector<AtPoint>& points, double error, double goal_s) {
  const auto slowest =
      std::ranges::max_element(points, {}, [&](const AtPoint& p) { return seconds_to(p.ladder, error); });
  const double ours_s = seconds_to(slowest->ladder, error), theirs_s = seconds_to(slowest->textbook, error);
  return {fmt::format("one card's light to {} % (1 sigma), slowest point ({})", 100.0 * error, slowest->name),
          fmt::format("<= {} s", goal_s),
          fmt::format("{:.4f} s", ours_s),
          fmt::format("textbook {:.3f} s", theirs_s),
          fmt::format("{:.1f} x", theirs_s / ours_s),
          met_when(ours_s <= goal_s)};
}

GoalRow ratio_row(const std::vector<AtPoint>& points) {
  std::vector<double> times;
  std::string each;
  for (const AtPoint& point : points) {
    times.push_back(point.times_quicker());
    each += fmt::format("{}{:.1f}", each.empty() ? "" : ", ", times.back());
  }
  const double middle = median(times);
  return {"one card's light, time to equal error, median of 4 points",
          ">= 8 x",
          each,
          "textbook = 1",
          fmt::format("{:.1f} x", middle),
          met_when(middle >= 8.0)};
}

}  // namespace

void point_goals(const Scene& scene) {
  const std::vector<AtPoint> points = card_at_points(scene);
  print_goals({time_row(points, kRough, 0.010), time_row(points, kFine, 0.8), ratio_row(points)});
}

void print_point_errors(const Scene& scene) {
  print_heading(
      "Meter points: relative standard error after about 0.1 s, and the time the textbook needs for it");
  print_row(
      {"point", "part", "lx", "textbook says", "product's error", "textbook's, same time", "time ratio"});
  print_rule(7);
  for (const Meter& meter : study_points()) {
    const std::array<Rung, 4> theirs = textbook(scene, meter, kTextbookSamples);
    for (std::size_t k = 0; k < theirs.size(); ++k) {
      const AtPoint point{meter.name, climb(scene, meter, kParts[k], 0.0, kCompareAt_s), theirs[k]};
      const Rung& ours = point.compared();
      const double same_time = theirs[k].error * std::sqrt(theirs[k].seconds / ours.seconds);
      print_row({meter.name, name_of(kParts[k]), fmt::format("{:.2f}", ours.lx),
                 fmt::format("{:.2f}", theirs[k].lx), fmt::format("{:.3f} %", 100.0 * ours.error),
                 fmt::format("{:.3f} %", 100.0 * same_time), fmt::format("{:.1f} x", point.times_quicker())});
    }
  }
}

}  // namespace fillside::bench
