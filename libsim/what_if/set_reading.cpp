#include "libsim/what_if/set_reading.h"

#include <algorithm>
#include <cmath>

#include "libsim/what_if/anchored.h"
#include "libsim/what_if/part_reading.h"
#include "libsim/what_if/set_instruments.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 64;

double half_width_of(const Measurement& measurement) {
  const Estimate total = measurement.total();
  return half_width_stops(total.value(), total.half_width_95());
}

/// All instruments of a set, each read until its own figures are good enough.
class SetInProgress {
 public:
  SetInProgress(const Scene& scene, const std::vector<Instrument>& instruments, const Effort& effort,
                const EffortProgress& progress);

  std::vector<Measurement> read();

 private:
  /// Two instruments whose ratio is a figure of its own.
  struct Pair {
    std::size_t lit, shadow;
  };
  void find_pair(std::string_view lit, std::string_view shadow);
  void judge();
  void report() const;

  const std::vector<Instrument>& instruments_;
  const Effort effort_;
  const EffortProgress& progress_;
  const EffortClock clock_;
  std::vector<PartReading> readings_;
  std::vector<Pair> pairs_;
  std::vector<double> half_widths_;  ///< of each instrument: the widest among its figures
};

SetInProgress::SetInProgress(const Scene& scene, const std::vector<Instrument>& instruments,
                             const Effort& effort, const EffortProgress& progress)
    : instruments_(instruments), effort_(effort), progress_(progress), clock_(effort) {
  const Budget first{.samples = kFirstSamples, .seed = effort.seed, .threads = effort.threads};
  for (const Instrument& instrument : instruments) readings_.emplace_back(scene, instrument.sensor, first);
  find_pair(kPatchLit, kPatchShadow);
  find_pair(kDishWindow, kDishAway);
  judge();
}

void SetInProgress::find_pair(std::string_view lit, std::string_view shadow) {
  const auto index_of = [&](std::string_view name) {
    const auto named = [&](const Instrument& each) { return name_of(each.sensor) == name; };
    return static_cast<std::size_t>(std::ranges::find_if(instruments_, named) - instruments_.begin());
  };
  const Pair pair{index_of(lit), index_of(shadow)};
  if (std::max(pair.lit, pair.shadow) < instruments_.size()) pairs_.push_back(pair);
}

/// How wide the error bars are: an instrument answers for its own reading and for the ratios it is part of.
void SetInProgress::judge() {
  half_widths_.clear();
  for (const PartReading& reading : readings_) half_widths_.push_back(half_width_of(reading.whole()));
  for (const auto& [lit, shadow] : pairs_) {
    const Estimate ratio = readings_[lit].whole().total() / readings_[shadow].whole().total();
    const double width = half_width_stops(ratio.value(), ratio.half_width_95());
    const std::size_t worse = half_widths_[lit] > half_widths_[shadow] ? lit : shadow;
    half_widths_[worse] = std::max(half_widths_[worse], width);
  }
}

void SetInProgress::report() const {
  if (!progress_) return;
  const double widest = std::ranges::max(half_widths_);
  const double share = std::pow(effort_.precision.si / std::max(widest, effort_.precision.si), 2.0);
  progress_({share, widest, clock_.seconds_left(widest)});
}

std::vector<Measurement> SetInProgress::read() {
  for (;;) {
    report();
    const auto widest =
        static_cast<std::size_t>(std::ranges::max_element(half_widths_) - half_widths_.begin());
    PartReading& reading = readings_[widest];
    if (!reading.can_refine() || !clock_.goes_on(half_widths_[widest], reading.refining_s())) break;
    reading.refine();
    judge();
  }
  std::vector<Measurement> measurements;
  for (const PartReading& reading : readings_) measurements.push_back(reading.whole());
  return measurements;
}

/// The widest error bar, in stops, among all readings and both ratios.
double widest_of(const SetReading& set) {
  double widest = 0.0;
  for (const Measurement& each : set.measurements) widest = std::max(widest, half_width_of(each));
  for (const auto& ratio : {set.food_lit_to_shadow, set.empty_lit_to_shadow})
    if (ratio) widest = std::max(widest, half_width_stops(ratio->value(), ratio->half_width_95()));
  return widest;
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

SetReading set_reading_of(const Description& description, const Scene& scene,
                          const std::vector<Instrument>& instruments, std::vector<Measurement> measurements) {
  SetReading set;
  set.key = find_key(scene, description.set.key, dish_place(scene));
  set.key_name = scene.emitters().empty() ? "" : scene.emitters()[set.key.emitter].name;
  set.measurements = std::move(measurements);
  for (std::size_t i = 0; i < instruments.size(); ++i) {
    const Measurement& m = set.measurements[i];
    set.readings.push_back(reading_of(m, set.key, instruments[i].kind, instruments[i].subject_there));
    if (set.refused.count == 0)
      set.refused = m.refused();
    else
      set.refused.count += m.refused().count;
    set.samples_per_replicate = m.samples_per_replicate();
  }
  set.food_lit_to_shadow = ratio_of(set, kPatchLit, kPatchShadow);
  set.empty_lit_to_shadow = ratio_of(set, kDishWindow, kDishAway);
  set.reached_stops = widest_of(set);
  return set;
}

SetReading read_set(const Description& description, const Scene& scene, const Effort& effort,
                    const EffortProgress& progress) {
  const auto instruments = instruments_of(description, scene);
  auto measurements = SetInProgress(scene, instruments, effort, progress).read();
  const auto anchor = anchor_all(description, instruments, measurements);
  SetReading set = set_reading_of(description, scene, instruments, std::move(measurements));
  set.anchor = anchor;
  set.reached = effort.seconds || set.reached_stops <= effort.precision.si;
  return set;
}

}  // namespace fillside
