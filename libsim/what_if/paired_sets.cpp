#include "libsim/what_if/paired_sets.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "libsim/scene/build.h"
#include "libsim/what_if/anchored.h"
#include "libsim/what_if/set_instruments.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {
namespace {

constexpr std::uint32_t kFirstSamples = 64;

const NamedFigure* figure_named(const std::vector<NamedFigure>& figures, const std::string& name) {
  const auto found = std::ranges::find(figures, name, &NamedFigure::name);
  return found == figures.end() ? nullptr : &*found;
}

}  // namespace

PairedSets::Set PairedSets::set_of(const Description& description) {
  Scene scene = std::move(build(description).scene);
  auto known = figures_of(description, scene);
  return {description, std::move(scene), std::move(known)};
}

PairedSets::PairedSets(const Description& from, const Description& to,
                       const std::vector<SeriesFigure>& figures, const Effort& effort)
    : from_(set_of(from)), to_(set_of(to)), figures_(figures), effort_(effort) {
  share_instruments({.samples = kFirstSamples, .seed = effort.seed, .threads = effort.threads});
  form();
}

void PairedSets::share_instruments(const Budget& first) {
  std::vector<std::string> names;
  for (const SeriesFigure& figure : figures_)
    if (const NamedFigure* known = figure_named(from_.known, figure.name))
      names.insert(names.end(), known->instruments.begin(), known->instruments.end());
  if (from_.description.anchor.says_anything()) names.push_back(anchor_meter(from_.description.anchor));
  const auto ones = instruments_named(names, from_.description, from_.scene),
             others = instruments_named(names, to_.description, to_.scene);
  for (const Instrument& one : ones)
    for (const Instrument& other : others)
      if (name_of(one.sensor) == name_of(other.sensor))
        shared_.emplace_back(
            std::vector<InstrumentPlace>{{0, &from_.scene, one.sensor}, {1, &to_.scene, other.sensor}},
            first);
}

std::vector<Estimate> PairedSets::values_of(const Set& set, std::size_t place) const {
  std::vector<std::string> names;
  for (const SharedInstrument& each : shared_) names.push_back(each.name());
  const auto instruments = instruments_named(names, set.description, set.scene);
  std::vector<Measurement> measurements;
  for (const Instrument& instrument : instruments)
    measurements.push_back(
        std::ranges::find(shared_, name_of(instrument.sensor), &SharedInstrument::name)->whole(place));
  const auto anchor = anchor_all(set.description, instruments, measurements);
  SetReading reading = set_reading_of(set.description, set.scene, instruments, std::move(measurements));
  reading.anchor = anchor;
  std::vector<Estimate> values;
  for (const SeriesFigure& figure : figures_) {
    const NamedFigure* known = figure_named(set.known, figure.name);
    values.push_back(known ? known->value({set.description, set.scene, reading}, effort_)
                           : Estimate(std::numeric_limits<double>::quiet_NaN()));
  }
  return values;
}

void PairedSets::form() {
  const auto from = values_of(from_, 0), to = values_of(to_, 1);
  changes_.clear();
  for (std::size_t f = 0; f < figures_.size(); ++f)
    changes_.push_back(step_between(from[f], to[f], figures_[f].unit));
}

SharedInstrument* PairedSets::noisiest(std::size_t figure) const {
  const NamedFigure* known = figure_named(from_.known, figures_[figure].name);
  SharedInstrument* worst = nullptr;
  const auto width = [](const SharedInstrument& each) { return each.difference_stops(1).half_width_95(); };
  for (SharedInstrument& each : shared_) {
    const bool asked =
        known && std::ranges::find(known->instruments, each.name()) != known->instruments.end();
    if (asked && each.can_refine(SharedInstrument::Aim::difference) &&
        (!worst || width(each) > width(*worst)))
      worst = &each;
  }
  return worst;
}

bool PairedSets::can_refine(std::size_t figure) const { return noisiest(figure) != nullptr; }

double PairedSets::refining_s(std::size_t figure) const {
  return noisiest(figure)->refining_s(SharedInstrument::Aim::difference);
}

void PairedSets::refine(std::size_t figure) {
  noisiest(figure)->refine(SharedInstrument::Aim::difference);
  form();
}

}  // namespace fillside
