// The share of raw Embree: the product's own rays, recorded and sent through the same tree again, against the
// product's time. Both on one thread.
#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <string>

#include "libsim/transport/measure.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/picture_reading.h"
#include "tests/bench/embree_watch.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/stopwatch.h"
#include "tests/bench/study_set.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

double quickest_s(const std::function<void()>& work) {
  double quickest = 1e30;
  for (int i = 0; i < 3; ++i) {
    const Stopwatch watch;
    work();
    quickest = std::min(quickest, watch.processor_s());
  }
  return quickest;
}

GoalRow share_row(const std::string& what, double goal_percent, const std::function<void()>& work) {
  const Recording recording(work);
  const double raw_s = recording.replay_s(), product_s = quickest_s(work);
  const double rays = static_cast<double>(recording.rays()) / 1e6, share = 100.0 * raw_s / product_s;
  const double packed = 100.0 * static_cast<double>(recording.rays_in_packets()) / rays / 1e6;
  return {
      "share of raw Embree, " + what,
      goal_percent > 0.0 ? fmt::format("{:.0f} %", goal_percent) : "",
      fmt::format("{:.1f} Mrays/s", rays / product_s),
      fmt::format("{:.1f} Mrays/s ({:.1f} million rays, {:.0f} % in packets)", rays / raw_s, rays, packed),
      fmt::format("{:.0f} %", share),
      goal_percent > 0.0 ? met_when(share >= goal_percent) : GoalRow::Verdict::told};
}

}  // namespace

void raw_share_goals(const Scene& scene) {
  const auto points = [&] {
    for (const Meter& meter : study_points())
      measure(scene, meter, {.samples = 256, .seed = kSeed, .threads = 1});
  };
  const auto textbook = [&] {
    for (const Meter& meter : study_points())
      plain::measure(scene, plain::Receptor::flat, meter.receiver.position, meter.receiver.normal, 50'000,
                     kSeed);
  };
  const Effort once{.precision = stops(100.0), .seconds = {}, .seed = kSeed, .threads = 1};
  print_goals({share_row("meter points", 60.0, points),
               share_row("textbook walk at the same points", 0.0, textbook)});
  print_goals({share_row("map, all of it", 0.0, [&] { read_map(scene, study_plane(32), once); })});
  print_goals(
      {share_row("picture, all of it", 0.0, [&] { take_picture(scene, study_camera(60, 40), once); })});
}

}  // namespace fillside::bench
