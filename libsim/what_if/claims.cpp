#include "libsim/what_if/claims.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "libsim/scene/build.h"
#include "libsim/what_if/map_reading.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {
namespace {

/// One set with its readings; claims about the same set share it.
struct Measured {
  Description description;
  Scene scene;
  SetReading reading;
};

struct Figure {
  std::optional<Estimate> value;
  std::string unit;
};

Figure ratio_figure(const std::optional<Estimate>& ratio, std::string_view what) {
  if (what == "lit_to_shadow") return {ratio, "ratio"};
  if (what == "stops" && ratio) return {in_stops(*ratio), "stops"};
  return {};
}

Figure meter_figure(const Measured& set, const std::string& name, std::string_view what) {
  const Reading* reading = set.reading.named(name);
  if (!reading) return {};
  if (what == "lx") return {reading->total_lx, "lx"};
  if (what == "key_lx") return {reading->key_lx, "lx"};
  if (what == "fill_lx") return {reading->fill_lx, "lx"};
  if (what == "key_to_fill") return {reading->key_to_fill, "ratio"};
  if (what == "ev100") return {reading->ev100, "EV"};
  return {};
}

Figure gain_figure(const Measured& set, const std::string& board, std::string_view meter) {
  const auto found = std::ranges::find(set.reading.readings, meter, &Reading::name);
  if (found == set.reading.readings.end()) return {};
  const auto index = static_cast<std::size_t>(found - set.reading.readings.begin());
  return {gain_stops(set.reading.measurements[index], board), "stops"};
}

Figure evenness_figure(const Measured& set, const std::string& name, const Effort& effort) {
  constexpr int kCellsAcross = 12;
  auto plane = map_plane(set.description, name, toward_window(set.scene, set.reading.key.emitter), kCellsAcross);
  if (!plane) return {};
  plane->subject_there = false;
  const Measurement map = read_map(set.scene, *plane, effort).measurement;
  Estimate low = map.total(0), high = low;
  for (std::size_t cell = 1; cell < map.element_count(); ++cell) {
    const Estimate here = map.total(cell);
    if (here.value() < low.value()) low = here;
    if (here.value() > high.value()) high = here;
  }
  return {in_stops(high / low), "stops"};
}

Figure figure_named(const Measured& set, const std::string& figure, const Effort& effort) {
  const auto dot = figure.find('.'), last = figure.rfind('.');
  if (dot == std::string::npos) return {};
  const std::string kind = figure.substr(0, dot), what = figure.substr(last + 1);
  if (kind == "subject") return ratio_figure(set.reading.subject_lit_to_shadow(), what);
  if (kind == "empty_spot") return ratio_figure(set.reading.empty_lit_to_shadow, what);
  if (last == dot) return {};
  const std::string name = figure.substr(dot + 1, last - dot - 1);
  if (kind == "meter") return meter_figure(set, name, what);
  if (kind == "plane" && what == "evenness") return evenness_figure(set, name, effort);
  if (const auto gain = name.rfind(".gain"); kind == "board" && gain != std::string::npos)
    return gain_figure(set, name.substr(0, gain), what);
  return {};
}

bool within(const ClaimSection& claim, double value) {
  if (claim.is && !(std::abs(value - *claim.is) <= claim.tolerance.value_or(0.0))) return false;
  if (claim.at_least && !(value >= *claim.at_least)) return false;
  return !claim.at_most || value <= *claim.at_most;
}

std::unique_ptr<Measured> measured(Description description, const Effort& effort) {
  Built built = build(description);
  auto set = std::make_unique<Measured>(Measured{std::move(description), std::move(built.scene), {}});
  set->reading = read_set(set->description, set->scene, effort);
  return set;
}

template <class Things>
void leave_out(Things& things, const std::string& name) {
  for (auto& thing : things)
    if (thing.name == name) thing.used = false;
}

}  // namespace

Description without(Description description, const std::string& name) {
  leave_out(description.boards, name);
  leave_out(description.diffusers, name);
  leave_out(description.items, name);
  leave_out(description.meshes, name);
  return description;
}

std::vector<ProvedClaim> prove_claims(const Description& description, const Effort& effort) {
  std::map<std::string, std::unique_ptr<Measured>> sets;  // by what is left out
  std::vector<ProvedClaim> proved;
  for (const ClaimSection& claim : description.claims) {
    auto& set = sets[claim.without];
    if (!set) set = measured(without(description, claim.without), effort);
    const Figure figure = figure_named(*set, claim.figure, effort);
    const bool known = figure.value && std::isfinite(figure.value->value());
    const Verdict verdict = !known ? Verdict::unknown_figure
                                   : (within(claim, figure.value->value()) ? Verdict::holds : Verdict::fails);
    proved.push_back({claim, verdict, figure.value, figure.unit});
  }
  return proved;
}

}  // namespace fillside
