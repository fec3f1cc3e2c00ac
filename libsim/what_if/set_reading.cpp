#include "libsim/what_if/set_reading.h"

#include <algorithm>

#include "libsim/what_if/anchored.h"
#include "libsim/what_if/set_instruments.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 64;
constexpr std::uint32_t kMostSamples = 1u << 20;

double widest(const std::vector<Measurement>& measurements) {
  double widest = 0.0;
  for (const Measurement& m : measurements) {
    const Estimate total = m.total();
    widest = std::max(widest, half_width_stops(total.value(), total.half_width_95()));
  }
  return widest;
}

/// Doubles the samples of every instrument until the effort says stop.
std::vector<Measurement> measure_to_precision(const Scene& scene, const std::vector<Instrument>& instruments,
                                              const Effort& effort, const EffortProgress& progress) {
  const EffortClock clock(effort);
  std::vector<Measurement> sum;
  Budget budget{.samples = kFirstSamples, .seed = effort.seed, .threads = effort.threads};
  for (double reached = 0.0;;) {
    for (std::size_t i = 0; i < instruments.size(); ++i) {
      Measurement more = measure(scene, instruments[i].sensor, budget);
      if (budget.first_sample == 0)
        sum.push_back(std::move(more));
      else
        sum[i].absorb(more);
      const double share = static_cast<double>(i + 1) / static_cast<double>(instruments.size());
      if (progress) progress({share, reached, clock.seconds_left(reached)});
    }
    reached = widest(sum);
    budget.first_sample += budget.samples;
    budget.samples = budget.first_sample;
    if (!clock.goes_on(reached) || budget.first_sample >= kMostSamples) return sum;
  }
}

std::optional<Estimate> ratio_of(const SetReading& set, std::string_view lit, std::string_view shadow) {
  const Reading *a = set.named(lit), *b = set.named(shadow);
  if (!a || !b) return std::nullopt;
  return lit_to_shadow(*a, *b);
}

}  // namespace

const Reading* SetReading::named(std::string_view name) const {
  const auto found = std::ranges::find(readings, name, &Reading::name);
  return found == readings.end() ? nullptr : &*found;
}

std::optional<Estimate> SetReading::subject_lit_to_shadow() const {
  return food_lit_to_shadow ? food_lit_to_shadow : empty_lit_to_shadow;
}

SetReading read_set(const Description& description, const Scene& scene, const Effort& effort,
                    const EffortProgress& progress) {
  SetReading set;
  set.key = find_key(scene, description.set.key, dish_place(scene));
  set.key_name = scene.emitters().empty() ? "" : scene.emitters()[set.key.emitter].name;
  const auto instruments = instruments_of(description, scene, toward_window(scene, set.key.emitter));
  set.measurements = measure_to_precision(scene, instruments, effort, progress);
  set.anchor = anchor_all(description, instruments, set.measurements);
  for (std::size_t i = 0; i < instruments.size(); ++i) {
    const Measurement& m = set.measurements[i];
    set.readings.push_back(reading_of(m, set.key, instruments[i].kind, instruments[i].subject_there));
    if (set.refused.count == 0)
      set.refused = m.refused();
    else
      set.refused.count += m.refused().count;
    set.samples_per_replicate = m.samples_per_replicate();
  }
  set.reached_stops = widest(set.measurements);
  set.reached = set.reached_stops <= effort.precision.si;
  set.food_lit_to_shadow = ratio_of(set, kPatchLit, kPatchShadow);
  set.empty_lit_to_shadow = ratio_of(set, kDishWindow, kDishAway);
  return set;
}

}  // namespace fillside
