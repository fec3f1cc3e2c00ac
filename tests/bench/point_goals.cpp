// Meter points: time to a wanted error, and against the textbook walk at the same points.
#include <fmt/format.h>

#include <algorithm>

#include "tests/bench/error_ladder.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"

namespace fillside::bench {
namespace {

constexpr std::uint64_t kTextbookSamples = 1'000'000;
constexpr double kFine = 1e-3, kRough = 1e-2, kCompareAt_s = 0.1;

struct AtPoint {
  Meter meter;
  std::vector<Rung> ladder;
  Rung textbook;

  /// The rung nearest to the time at which both are compared.
  const Rung& compared() const {
    return *std::ranges::min_element(
        ladder, {}, [](const Rung& r) { return std::abs(std::log(r.seconds / kCompareAt_s)); });
  }
  double times_quicker(Part part) const {
    return seconds_to(textbook, part, compared().error_of(part)) / compared().seconds;
  }
};

const std::vector<AtPoint>& points_of(const Scene& scene) {
  static const std::vector<AtPoint> points = [&] {
    std::vector<AtPoint> found;
    for (const Meter& meter : study_points())
      found.push_back(
          {meter, climb(scene, meter, Part::card, kFine), textbook(scene, meter, kTextbookSamples)});
    return found;
  }();
  return points;
}

GoalRow time_row(const std::vector<AtPoint>& points, double error, double goal_s) {
  const auto slowest = std::ranges::max_element(
      points, {}, [&](const AtPoint& p) { return seconds_to(p.ladder, Part::card, error); });
  const double ours_s = seconds_to(slowest->ladder, Part::card, error);
  const double theirs_s = seconds_to(slowest->textbook, Part::card, error);
  return {fmt::format("one card's light to {} % (1 sigma), slowest point ({})", 100.0 * error,
                      slowest->meter.name),
          fmt::format("{} s", goal_s),
          fmt::format("{:.4f} s", ours_s),
          fmt::format("textbook {:.3f} s", theirs_s),
          fmt::format("{:.1f} x", theirs_s / ours_s),
          met_when(ours_s <= goal_s)};
}

GoalRow ratio_row(const std::vector<AtPoint>& points) {
  std::vector<double> times;
  std::string each;
  for (const AtPoint& point : points) {
    times.push_back(point.times_quicker(Part::card));
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
  const auto& points = points_of(scene);
  print_goals({time_row(points, kRough, 0.010), time_row(points, kFine, 0.8), ratio_row(points)});
}

void print_point_errors(const Scene& scene) {
  print_heading(
      "Meter points: relative standard error after about 0.1 s, and the time the textbook needs for it");
  print_row({"point", "part", "lx", "textbook says", "product's error", "textbook's error, same time",
             "time ratio"});
  print_rule(7);
  for (const AtPoint& point : points_of(scene))
    for (const Part part : kParts) {
      const Rung& ours = point.compared();
      const double theirs = point.textbook.error_of(part) * std::sqrt(point.textbook.seconds / ours.seconds);
      print_row({point.meter.name, name_of(part), fmt::format("{:.2f}", ours.value_of(part)),
                 fmt::format("{:.2f}", point.textbook.value_of(part)),
                 fmt::format("{:.3f} %", 100.0 * ours.error_of(part)),
                 fmt::format("{:.3f} %", 100.0 * theirs),
                 fmt::format("{:.1f} x", point.times_quicker(part))});
    }
}

}  // namespace fillside::bench
