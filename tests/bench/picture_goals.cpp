// The picture of 480 x 320: time to a mean relative squared error of 0.01.
#include <fmt/format.h>

#include <cmath>
#include <random>

#include "libsim/what_if/picture_reading.h"
#include "tests/bench/against_truth.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/goals.h"
#include "tests/bench/modes.h"
#include "tests/bench/stopwatch.h"
#include "tests/bench/study_set.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

constexpr double kWanted = 0.01;

std::vector<TimedError> runs_in(const Mode& mode, const Scene& scene, const Camera& camera,
                                const Truth& truth) {
  std::vector<TimedError> runs;
  for (double precision = 1.6; precision > 0.02; precision *= 0.5) {
    const Stopwatch watch;
    const PictureReading picture = take_picture(scene, camera, effort_in(mode, precision));
    const double seconds = watch.all_processors_s();
    runs.push_back({seconds, truth.mean_relative_square(picture.measurement)});
    if (runs.back().error <= kWanted || seconds > 40.0) break;
  }
  return runs;
}

/// Time in which the textbook walk would make the picture as good, from the scatter at random pixels.
double textbook_s(const Scene& scene, const Camera& camera, const Truth& truth) {
  constexpr int kTried = 2000;
  constexpr std::uint64_t kSamples = 64;
  std::mt19937_64 dice(kSeed);
  double squares = 0.0;
  const double least = 0.01 * truth.mean(total_of);
  const Stopwatch watch;
  for (int tried = 0; tried < kTried; ++tried) {
    const std::size_t pixel = dice() % camera.element_count();
    const auto ray = [&](std::uint64_t sample) {
      return camera.draw(pixel, SampleNumbers(kSeed, pixel, 0, static_cast<std::uint32_t>(sample)).group(0));
    };
    const double error = plain::look(scene, ray, kSamples, dice()).standard_error;
    squares += std::pow(error / std::max(least, total_of(truth.one(), pixel)), 2);
  }
  const double picture_s = watch.all_processors_s() / kTried * static_cast<double>(camera.element_count());
  return picture_s * squares / kTried / kWanted;
}

}  // namespace

void picture_goals(const Scene& scene) {
  const Camera camera = study_camera(480, 320);
  const Truth truth(scene, camera, 1, 32);
  const double theirs_s = textbook_s(scene, camera, truth);
  for (const Mode& mode : kModes) {
    const std::vector<TimedError> runs = runs_in(mode, scene, camera, truth);
    const double ours_s = seconds_to(runs, kWanted, mode.unbiased ? 1.0 : 0.0),
                 goal_s = mode.unbiased ? 3.0 : 1.2;
    print_goals(
        {{fmt::format("picture 480 x 320, {}, to relMSE 0.01", mode.name), fmt::format("<= {} s", goal_s),
          fmt::format("{:.2f} s (ran {:.2f} s to {:.4f})", ours_s, runs.back().seconds, runs.back().error),
          fmt::format("textbook {:.1f} s", theirs_s), fmt::format("{:.1f} x", theirs_s / ours_s),
          met_when(ours_s <= goal_s)}});
  }
}

}  // namespace fillside::bench
