// What the cost grows with: triangles, boards, windows, cells, precision.
#include <fmt/format.h>

#include <cmath>

#include "libsim/transport/measure.h"
#include "libsim/what_if/map_reading.h"
#include "tests/bench/embree_watch.h"
#include "tests/bench/error_ladder.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/modes.h"
#include "tests/bench/stopwatch.h"

namespace fillside::bench {
namespace {

struct Cost {
  double build_s, sample_us, raw_share, to_one_percent_s;
};

/// Of the place in the food's shadow.
Cost cost_of(const StudyWish& wish) {
  const Stopwatch build;
  const Scene scene = study_set(wish);
  const double build_s = build.processor_s();
  const Meter meter = study_points()[2];
  const Budget budget{.samples = 512, .seed = kSeed, .threads = 1};
  const auto work = [&] { measure(scene, meter, budget); };
  work();
  const Stopwatch watch;
  work();
  const double product_s = watch.processor_s();
  const Recording recording(work);
  return {build_s, 1e6 * product_s / (512.0 * kMostReplicates), recording.replay_s() / product_s,
          seconds_to(climb(scene, meter, Part::total, 0.002, 4.0), 0.002)};
}

void print_costs(const std::string& grows, const std::vector<std::pair<std::string, StudyWish>>& wishes) {
  print_heading("Cost against " + grows + " (a point in the food's shadow)");
  print_row({grows, "build, s", "a sample, us", "of that raw Embree", "total to 0.2 %, ms"});
  print_rule(5);
  for (const auto& [name, wish] : wishes) {
    const Cost cost = cost_of(wish);
    print_row({name, fmt::format("{:.3f}", cost.build_s), fmt::format("{:.2f}", cost.sample_us),
               fmt::format("{:.0f} %", 100.0 * cost.raw_share),
               fmt::format("{:.1f}", 1e3 * cost.to_one_percent_s)});
  }
}

void print_map_sizes() {
  const Scene scene = study_set();
  print_heading("Cost against cells of a map, at 0.4 stop");
  print_row({"cells", "mode", "s", "us a cell"});
  print_rule(4);
  for (const Mode& mode : kModes)
    for (const int cells : {32, 64, 128, 256}) {
      const Stopwatch watch;
      read_map(scene, study_plane(cells), effort_in(mode, 0.4));
      const double seconds = watch.all_processors_s();
      print_row({fmt::format("{0} x {0}", cells), mode.name, fmt::format("{:.2f}", seconds),
                 fmt::format("{:.1f}", 1e6 * seconds / cells / cells)});
    }
}

/// Slope of log error over log time by least squares, the quickest two rungs left out: starting threads is
/// most of their time.
double slope(const std::vector<Rung>& ladder) {
  double n = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0;
  for (std::size_t i = 2; i < ladder.size(); ++i) {
    const double a = std::log(ladder[i].seconds), b = std::log(ladder[i].error);
    n += 1.0, x += a, y += b, xx += a * a, xy += a * b;
  }
  return (n * xy - x * y) / (n * xx - x * x);
}

void print_precision() {
  const Scene scene = study_set();
  print_heading("Error against time, up to 0.5 s: slopes of log over log (-0.5: independent samples)");
  print_row({"point", "card", "key", "rest", "total"});
  print_rule(5);
  for (const Meter& meter : study_points()) {
    std::vector<std::string> cells{meter.name};
    for (const Part part : kParts) {
      const std::vector<Rung> ladder = climb(scene, meter, part, 0.0, 0.5);
      cells.push_back(ladder.back().error > 0.0 ? fmt::format("{:.2f}", slope(ladder)) : "no light");
    }
    print_row(cells);
  }
}

}  // namespace

void print_scaling() {
  std::vector<std::pair<std::string, StudyWish>> triangles, boards, windows;
  for (const std::size_t count : {1'000u, 10'000u, 100'000u, 300'000u, 1'000'000u})
    triangles.push_back({std::to_string(count), {.food_triangles = count}});
  for (const int count : {0, 1, 2, 3, 6, 10}) boards.push_back({std::to_string(count), {.boards = count}});
  for (const int count : {1, 2, 3, 4}) windows.push_back({std::to_string(count), {.windows = count}});
  print_costs("triangles of the food", triangles);
  print_costs("boards", boards);
  print_costs("windows", windows);
  print_map_sizes();
  print_precision();
}

}  // namespace fillside::bench
