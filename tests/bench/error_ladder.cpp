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

Parts parts_for(Part part) {
  return part == Part::card ? kBoardPart : part == Part::key ? kEmitterPart : kAllParts;
}

Rung rung(const Scene& scene, const Meter& meter, Part part, std::uint32_t samples, int seeds) {
  Rung rung;
  double squares = 0.0;
  const Stopwatch watch;
  for (int i = 0; i < seeds; ++i) {
    const Budget budget{
        .samples = samples, .seed = kSeed + static_cast<std::uint64_t>(i), .parts = parts_for(part)};
    const Estimate light = part_of(measure(scene, meter, budget), part);
    rung.lx += light.value() / seeds;
    squares += std::pow(light.standard_error(), 2) / seeds;
  }
  rung.seconds = watch.all_processors_s() / seeds;
  rung.error = rung.lx > 0.0 ? std::sqrt(squares) / rung.lx : 0.0;
  return rung;
}

}  // namespace

std::vector<Rung> climb(const Scene& scene, const Meter& meter, Part part, double target, double longest_s) {
  std::vector<Rung> ladder;
  for (std::uint32_t samples = 2; samples <= 1u << 24; samples *= 2) {
    const bool is_long = !ladder.empty() && ladder.back().seconds > kLong_s;
    ladder.push_back(rung(scene, meter, part, samples, is_long ? kFewSeeds : kManySeeds));
    if (ladder.back().error <= target || ladder.back().seconds > longest_s) break;
  }
  return ladder;
}

double seconds_to(const std::vector<Rung>& ladder, double target) {
  const auto above = std::ranges::find_if(ladder, [&](const Rung& r) { return r.error <= target; });
  if (above == ladder.begin()) return above->seconds;
  if (above == ladder.end()) return 1e9;
  const auto below = above - 1;
  const double share = std::log(below->error / target) / std::log(below->error / above->error);
  return below->seconds * std::pow(above->seconds / below->seconds, share);
}

std::array<Rung, 4> textbook(const Scene& scene, const Meter& meter, std::uint64_t samples) {
  const Stopwatch watch;
  const plain::Parts parts =
      plain::measure_parts(scene, plain::Receptor::flat, meter.receiver.position, meter.receiver.normal,
                           object_named(scene, kCard), samples, kSeed);
  const double seconds = watch.all_processors_s();
  const auto rung = [&](const plain::Figure& figure) {
    return Rung{seconds, figure.lx > 0.0 ? figure.standard_error / figure.lx : 0.0, figure.lx};
  };
  return {rung(parts.by_object), rung(parts.straight), rung(parts.rest), rung(parts.total)};
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  if (values.size() % 2 == 1) return *middle;
  return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

}  // namespace fillside::bench
