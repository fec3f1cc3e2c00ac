#include "libsim/what_if/shared_reading.h"

#include <algorithm>
#include <cmath>

#include "libsim/what_if/anchored.h"
#include "libsim/what_if/set_instruments.h"
#include "libsim/what_if/shared_instrument.h"

namespace fillside {
namespace {

using Aim = SharedInstrument::Aim;
using Instruments = std::vector<Instrument>;
constexpr std::uint32_t kFirstSamples = 64;

bool alike(const Instrument& a, const Instrument& b) {
  return name_of(a.sensor) == name_of(b.sensor) && a.kind == b.kind && a.subject_there == b.subject_there;
}

/// Each instrument with all its places; every place belongs to one.
std::vector<std::vector<InstrumentPlace>> places_of(const std::vector<SetBeside>& sets,
                                                    const std::vector<Instruments>& instruments) {
  std::vector<std::vector<InstrumentPlace>> places;
  std::vector<const Instrument*> heads;
  for (std::size_t s = 0; s < sets.size(); ++s)
    for (const Instrument& each : instruments[s]) {
      const auto head = std::ranges::find_if(heads, [&](const Instrument* h) { return alike(*h, each); });
      const auto at = static_cast<std::size_t>(head - heads.begin());
      if (head == heads.end()) heads.push_back(&each), places.emplace_back();
      places[at].push_back({s, &sets[s].scene, each.sensor});
    }
  return places;
}

double width_stops(const Estimate& stops) {
  const double width = stops.half_width_95();
  return std::isfinite(width) ? width : 0.0;  // no light: nothing to wait for
}

/// The sets while they are being read.
class SetsInProgress {
 public:
  SetsInProgress(const std::vector<SetBeside>& sets, const std::vector<Instruments>& instruments,
                 const Effort& effort, const EffortProgress& progress);
  void read();
  const Measurement& measurement(std::size_t set, const Instrument& instrument) const;
  double widest_difference() const;

 private:
  /// How far an instrument is from what is asked for: a width in stops, to be held against the precision.
  struct Need {
    double width = 0.0;
    Aim aim = Aim::difference;
  };
  Need need_of(const SharedInstrument& each) const;
  void judge();
  void judge_ratio(std::string_view lit, std::string_view shadow);
  void report(double widest) const;
  std::size_t index_of(std::string_view name) const;

  const Effort effort_;
  const EffortProgress& progress_;
  const EffortClock clock_;
  const double reading_weight_;  ///< makes a reading's width comparable with a difference's
  std::vector<SharedInstrument> shared_;
  std::vector<Need> needs_;
  double widest_ratio_ = 0.0;  ///< difference of lit:shadow
};

SetsInProgress::SetsInProgress(const std::vector<SetBeside>& sets,
                               const std::vector<Instruments>& instruments, const Effort& effort,
                               const EffortProgress& progress)
    : effort_(effort),
      progress_(progress),
      clock_(effort),
      reading_weight_(std::min(1.0, effort.precision.si / kReadingBeside.si)) {
  const Budget first{.samples = kFirstSamples, .seed = effort.seed, .threads = effort.threads};
  for (auto& places : places_of(sets, instruments)) shared_.emplace_back(std::move(places), first);
  judge();
}

SetsInProgress::Need SetsInProgress::need_of(const SharedInstrument& each) const {
  Need need;
  for (std::size_t p = 0; p < each.places().size(); ++p) {
    if (p > 0) need.width = std::max(need.width, width_stops(each.difference_stops(p)));
    const Estimate lx = each.whole(p).total();
    const double own = reading_weight_ * half_width_stops(lx.value(), lx.half_width_95());
    if (own > need.width) need = {own, Aim::reading};
  }
  return need;
}

std::size_t SetsInProgress::index_of(std::string_view name) const {
  const auto named = [&](const SharedInstrument& each) { return each.name() == name; };
  return static_cast<std::size_t>(std::ranges::find_if(shared_, named) - shared_.begin());
}

void SetsInProgress::judge() {
  needs_.clear();
  widest_ratio_ = 0.0;
  for (const SharedInstrument& each : shared_) needs_.push_back(need_of(each));
  judge_ratio(kPatchLit, kPatchShadow);
  judge_ratio(kDishWindow, kDishAway);
}

/// The change of a ratio is answered for by the worse of its two instruments.
void SetsInProgress::judge_ratio(std::string_view lit, std::string_view shadow) {
  const std::size_t a = index_of(lit), b = index_of(shadow);
  if (std::max(a, b) >= shared_.size()) return;
  const SharedInstrument &one = shared_[a], &other = shared_[b];
  for (std::size_t p = 1; p < std::min(one.places().size(), other.places().size()); ++p) {
    if (one.places()[0].set + other.places()[0].set > 0 || one.places()[p].set != other.places()[p].set)
      continue;
    const double width = width_stops(one.difference_stops(p) - other.difference_stops(p));
    widest_ratio_ = std::max(widest_ratio_, width);
    const bool first = one.difference_stops(p).half_width_95() > other.difference_stops(p).half_width_95();
    Need& worse = needs_[first ? a : b];
    if (width > worse.width) worse = {width, Aim::difference};
  }
}

double SetsInProgress::widest_difference() const {
  double widest = widest_ratio_;
  for (const SharedInstrument& each : shared_)
    for (std::size_t p = 1; p < each.places().size(); ++p)
      if (each.places().front().set == 0) widest = std::max(widest, width_stops(each.difference_stops(p)));
  return widest;
}

void SetsInProgress::report(double widest) const {
  if (!progress_) return;
  const double share = std::pow(effort_.precision.si / std::max(widest, effort_.precision.si), 2.0);
  progress_({share, widest_difference(), clock_.seconds_left(widest)});
}

void SetsInProgress::read() {
  for (;;) {
    const auto neediest = std::ranges::max_element(needs_, {}, &Need::width);
    report(neediest->width);
    SharedInstrument& each = shared_[static_cast<std::size_t>(neediest - needs_.begin())];
    const Aim aim = neediest->aim;
    if (!each.can_refine(aim) || !clock_.goes_on(neediest->width, each.refining_s(aim))) return;
    each.refine(aim);
    judge();
  }
}

const Measurement& SetsInProgress::measurement(std::size_t set, const Instrument& instrument) const {
  for (const SharedInstrument& each : shared_)
    for (std::size_t p = 0; p < each.places().size(); ++p)
      if (each.places()[p].set == set && each.name() == name_of(instrument.sensor)) return each.whole(p);
  return shared_.front().whole(0);  // never: each instrument was given its place
}

bool is_same_reading(const AnchorSection& a, const AnchorSection& b) {
  return a.says_anything() && b.says_anything() && a.meter == b.meter && a.lux == b.lux &&
         a.aperture == b.aperture && a.shutter == b.shutter && a.iso == b.iso && a.reading == b.reading &&
         a.reflectance == b.reflectance;
}

}  // namespace

SharedReading read_shared(const std::vector<SetBeside>& sets, const Effort& effort,
                          const EffortProgress& progress) {
  std::vector<Instruments> instruments;
  for (const auto& [description, scene] : sets) instruments.push_back(instruments_of(description, scene));
  SetsInProgress reading(sets, instruments, effort, progress);
  reading.read();
  SharedReading shared;
  for (std::size_t s = 0; s < sets.size(); ++s) {
    const Description& description = sets[s].description;
    const Scene& scene = sets[s].scene;
    std::vector<Measurement> measured;
    for (const Instrument& each : instruments[s]) measured.push_back(reading.measurement(s, each));
    std::optional<Anchor> anchor;
    const auto earlier = std::ranges::find_if(sets, [&](const SetBeside& other) {
      return is_same_reading(other.description.anchor, description.anchor);
    });
    if (const auto e = static_cast<std::size_t>(earlier - sets.begin()); e < s) {
      anchor = shared.sets[e].anchor;
      for (Measurement& each : measured) each.scale(anchor->factor);
    } else {
      anchor = anchor_all(description, instruments[s], measured);
    }
    shared.sets.push_back(set_reading_of(description, scene, instruments[s], std::move(measured)));
    shared.sets.back().anchor = anchor;
  }
  shared.reached_stops = reading.widest_difference();
  shared.reached = effort.seconds || shared.reached_stops <= effort.precision.si;
  return shared;
}

}  // namespace fillside
