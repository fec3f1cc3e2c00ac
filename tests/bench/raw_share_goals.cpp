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
#include "tests/bench/modes.h"
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

GoalRow share_row(const std::string& what, double goal_percent, const std::function<void()>& work,
                  std::size_t keep_one_in = 1) {
  const Recording recording(work, keep_one_in);
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

/// 16 points of the window from each place on the table.
void shadow_rays(const Scene& scene) {
  const MapPlane plane = study_plane(64);
  const Rectangle& window = std::get<Opening>(scene.emitters()[0].kind).rectangle;
  for (std::size_t cell = 0; cell < plane.element_count(); ++cell)
    for (int i = 0; i < 16; ++i) {
      const Point goal = window.at(0.5 * (i % 4) - 0.75, 0.5 * (i / 4) - 0.75);
      scene.caster().blocked(shadow_ray(plane.middle_of(cell), plane.rectangle.normal(), goal), kAllOpaque);
    }
}

/// What packets have to give: Embree alone, no product.
GoalRow packet_row(const Scene& scene) {
  const Recording single([&] { shadow_rays(scene); });
  const Recording packed = single.in_packets();
  const double rays = static_cast<double>(single.rays()) / 1e6, single_s = single.replay_s(),
               packed_s = packed.replay_s();
  return {"raw Embree: 16 shadow rays from one point in a packet, against one by one",
          "",
          fmt::format("{:.1f} Mrays/s", rays / packed_s),
          fmt::format("{:.1f} Mrays/s", rays / single_s),
          fmt::format("{:.1f} x", single_s / packed_s),
          GoalRow::Verdict::told};
}

}  // namespace

void raw_share_goals(const Scene& scene) {
  const auto points = [&] {
    for (const Meter& meter : study_points())
      measure(scene, meter, {.samples = 256, .seed = kSeed, .threads = 1});
  };
  const auto plain_points = [&] {
    for (const Meter& meter : study_points())
      plain::measure(scene, plain::Receptor::flat, meter.receiver.position, meter.receiver.normal, 20'000,
                     kSeed);
  };
  print_goals({share_row("meter points", 60.0, points),
               share_row("textbook walk at the same points", 0.0, plain_points), packet_row(scene)});
  for (const Mode& mode : kModes) {
    const Effort once = effort_in(mode, 100.0, 1);
    print_goals({share_row(
                     fmt::format("{} map of 64 x 64, all of it", mode.name), 0.0,
                     [&] { read_map(scene, study_plane(64), once); }, 8),
                 share_row(
                     fmt::format("{} picture of 90 x 60, all of it", mode.name), 0.0,
                     [&] { take_picture(scene, study_camera(90, 60), once); }, 8)});
  }
}

}  // namespace fillside::bench
