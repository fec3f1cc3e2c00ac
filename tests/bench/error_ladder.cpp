#include "tests/bench/error_ladder.h"

#include <algorithm>
#include <cmath>

#include "libsim/transport/measure.h"
#include "tests/bench/goal_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/plain_walk/plain_walk.h"

namespace fillside::bench {
namespace {

constexpr int kManySeeds = 6;  // of 16 replicates each: an error bar that is itself within 8 %
constexpr int kFewSeeds = 2;   // within 13 %, for long runs
constexpr double kLong_s = 0.2;
constexpr double kLongEnough_s = 6.0;  // then a target counts as out of reach

Rung rung(const Scene& scene, const Meter& meter, std::uint32_t samples, int seeds) {
  Rung rung;
  std::array<double, 4> squares{};
  const Stopwatch watch;
  std::vector<Measurement> runs;
  for (std::uint64_t i = 0; i < static_cast<std::uint64_t>(seeds); ++i)
    runs.push_back(measure(scene, meter, {.samples = samples, .seed = kSeed + i}));
  rung.seconds = watch.all_processors_s() / seeds;
  for (const Measurement& run : runs)
    for (std::size_t k = 0; k < 4; ++k) {
      const Estimate part = part_of(run, kParts[k]);
      rung.value[k] += part.value() / seeds;
      squares[k] += std::pow(part.standard_error(), 2) / seeds;
    }
  for (std::size_t k = 0; k < 4; ++k)
    rung.error[k] = rung.value[k] > 0.0 ? std::sqrt(squares[k]) / rung.value[k] : 0.0;
  return rung;
}

}  // namespace

std::vector<Rung> climb(const Scene& scene, const Meter& meter, Part part, double target) {
  std::vector<Rung> ladder;
  for (std::uint32_t samples = 2; ladder.empty() || ladder.back().error_of(part) > target; samples *= 2) {
    const bool is_long = !ladder.empty() && ladder.back().seconds > kLong_s;
    ladder.push_back(rung(scene, meter, samples, is_long ? kFewSeeds : kManySeeds));
    if (ladder.back().seconds > kLongEnough_s) break;
  }
  return ladder;
}

double seconds_to(const std::vector<Rung>& ladder, Part part, double target) {
  const auto above = std::ranges::find_if(ladder, [&](const Rung& r) { return r.error_of(part) <= target; });
  if (above == ladder.begin()) return above->seconds;
  if (above == ladder.end()) return 1e9;
  const auto below = above - 1;
  const double share =
      std::log(below->error_of(part) / target) / std::log(below->error_of(part) / above->error_of(part));
  return below->seconds * std::pow(above->seconds / below->seconds, share);
}

Rung textbook(const Scene& scene, const Meter& meter, std::uint64_t samples) {
  const Stopwatch watch;
  const plain::Parts parts =
      plain::measure_parts(scene, plain::Receptor::flat, meter.receiver.position, meter.receiver.normal,
                           object_named(scene, kCard), samples, kSeed);
  Rung rung{watch.all_processors_s(), {}, {}};
  const std::array figures{parts.by_object, parts.straight, parts.rest, parts.total};
  for (std::size_t k = 0; k < 4; ++k) {
    rung.value[k] = figures[k].lx;
    rung.error[k] = figures[k].lx > 0.0 ? figures[k].standard_error / figures[k].lx : 0.0;
  }
  return rung;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  if (values.size() % 2 == 1) return *middle;
  return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

}  // namespace fillside::bench
