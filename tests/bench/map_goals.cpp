// The map of 256 x 256: time to 2 % of error in its total and in every row, and the bias of a cached mode.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>

#include "libsim/what_if/map_reading.h"
#include "tests/bench/against_truth.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/modes.h"
#include "tests/bench/stopwatch.h"
#include "tests/bench/study_set.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

constexpr int kCells = 256;
constexpr double kWanted = 0.02;
constexpr double kWeakestRow = 0.01;  // rows below this share of the total are not asked for 2 %

struct Run {
  double seconds = 0.0, total_error = 0.0, worst_row_error = 0.0;
  std::string worst_row;
  double bias = 0.0, block_bias = 0.0, block_noise = 0.0;
  std::optional<Audit> audit;
};

Run judge(const MapReading& reading, const Truth& truth, double seconds) {
  const Measurement& map = reading.measurement;
  Run run;
  run.seconds = seconds;
  run.total_error = truth.relative_error(map, total_of);
  const double all = truth.mean(total_of);
  for (std::size_t source = 0; source < map.source_count(); ++source)
    for (std::size_t via = 0; via < map.via_count(); ++via) {
      const RowOf row = [&](const Measurement& m, std::size_t i) { return m.row(i, source, via).value(); };
      if (truth.mean(row) < kWeakestRow * all) continue;
      const double error = truth.relative_error(map, row);
      if (error > run.worst_row_error) run.worst_row_error = error, run.worst_row = map.names().via_name(via);
    }
  run.bias = truth.relative_bias(map);
  run.block_bias = truth.largest_block_bias(map, 8);
  run.block_noise = truth.block_noise(8);
  run.audit = reading.audit;
  return run;
}

/// Runs of ever finer precision until total and rows are good enough.
std::vector<Run> runs_in(const Mode& mode, const Scene& scene, const Truth& truth) {
  std::vector<Run> runs;
  for (double precision = 0.8; precision > 0.01; precision *= 0.5) {
    const Stopwatch watch;
    const MapReading reading = read_map(scene, study_plane(kCells), effort_in(mode, precision));
    const double seconds = watch.all_processors_s();
    if (!runs.empty() && seconds < 1.2 * runs.back().seconds) continue;  // the same samples once more
    runs.push_back(judge(reading, truth, seconds));
    if (runs.back().worst_row_error <= kWanted || seconds > 15.0) break;
  }
  return runs;
}

double seconds_of(const std::vector<Run>& runs, double Run::*error, double falls) {
  std::vector<TimedError> timed;
  for (const Run& run : runs) timed.push_back({run.seconds, run.*error});
  return seconds_to(timed, kWanted, falls);
}

/// Time in which the textbook walk would make the map as good: from the scatter at random open cells.
struct Textbook {
  double total_s, card_s;
};
Textbook textbook_for(const Scene& scene, const Truth& truth) {
  constexpr int kTried = 300;
  constexpr std::uint64_t kSamples = 400;
  const MapPlane plane = study_plane(kCells);
  const std::size_t card = object_named(scene, kCard);
  std::mt19937_64 dice(kSeed);
  double total_variance = 0.0, card_variance = 0.0, total = 0.0, by_card = 0.0;
  const Stopwatch watch;
  for (int tried = 0; tried < kTried;) {
    const std::size_t cell = dice() % plane.element_count();
    if (!truth.counts(cell)) continue;
    const plain::Parts parts = plain::measure_parts(scene, plain::Receptor::flat, plane.middle_of(cell),
                                                    plane.rectangle.normal(), card, kSamples, dice());
    total_variance += std::pow(parts.total.standard_error, 2), total += parts.total.lx;
    card_variance += std::pow(parts.by_object.standard_error, 2), by_card += parts.by_object.lx;
    ++tried;
  }
  const double whole_map_s = watch.all_processors_s() / kTried * static_cast<double>(plane.element_count());
  return {whole_map_s * kTried * total_variance / std::pow(kWanted * total, 2),
          whole_map_s * kTried * card_variance / std::pow(kWanted * by_card, 2)};
}

GoalRow bias_row(const Mode& mode, const Run& run) {
  const std::string audit =
      run.audit ? fmt::format("its own audit: {:+.2f} %; {:.2f} % (rms, at most) at single points",
                              100.0 * run.audit->mean_bias.value(), 100.0 * run.audit->point_bias_at_most)
                : "none needed";
  return {fmt::format("bias of the {} map ({:.2f} s): mean; largest of 64 blocks", mode.name, run.seconds),
          "<= 0.3 %; <= 0.5 %",
          fmt::format("{:+.2f} %; {:+.2f} % (what it is compared with: +-{:.2f} % in a block)",
                      100.0 * run.bias, 100.0 * run.block_bias, 100.0 * run.block_noise),
          audit,
          "",
          met_when(std::abs(run.bias) <= 0.003 && std::abs(run.block_bias) <= 0.005)};
}

}  // namespace

void map_goals(const Scene& scene) {
  Truth truth(scene, study_plane(kCells), 8, 4);
  std::vector<bool> covered;
  for (std::size_t cell = 0; cell < truth.one().element_count(); ++cell)
    covered.push_back(is_covered(study_plane(kCells), scene, cell));
  truth.leave_out(covered);
  const Textbook textbook = textbook_for(scene, truth);
  for (const Mode& mode : kModes) {
    const std::vector<Run> runs = runs_in(mode, scene, truth);
    const double falls = mode.unbiased ? 0.5 : 0.0;
    const double total_s = seconds_of(runs, &Run::total_error, falls),
                 rows_s = seconds_of(runs, &Run::worst_row_error, falls);
    const Run& last = runs.back();
    const bool reached = last.worst_row_error <= kWanted;
    print_goals(
        {{fmt::format("map 256 x 256, {}, total to 2 % nRMSE", mode.name), "<= 1 s and >= 40 x",
          fmt::format("{:.2f} s", total_s), fmt::format("textbook {:.0f} s", textbook.total_s),
          fmt::format("{:.0f} x", textbook.total_s / total_s),
          met_when(total_s <= 1.0 && textbook.total_s >= 40.0 * total_s)},
         {fmt::format("the same, every row of 1 % or more (worst: {})", last.worst_row), "<= 1 s",
          reached ? fmt::format("{:.2f} s", rows_s)
                  : fmt::format("{:.1f} % after {:.0f} s", 100.0 * last.worst_row_error, last.seconds),
          fmt::format("textbook, the card's row {:.0f} s", textbook.card_s),
          reached ? fmt::format("{:.0f} x", textbook.card_s / rows_s) : "-", met_when(rows_s <= 1.0)},
         bias_row(mode, last)});
  }
}

}  // namespace fillside::bench
