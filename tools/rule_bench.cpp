#include "tools/rule_bench.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cassert>

#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "libsim/sensor/instruments.h"
#include "libsim/transport/key.h"
#include "libsim/view/softness.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/set_instruments.h"
#include "libsim/what_if/set_reading.h"

namespace fillside::tools {
namespace {

double half_width(const Estimate& value, const std::string& unit) {
  if (unit == "lx" || unit == "ratio") return half_width_stops(value.value(), value.half_width_95());
  return unit == "mm" ? 0.0 : value.half_width_95();
}

Estimate spread_deg(const Description& description, const Scene& scene) {
  const Key key = find_key(scene, description.set.key, dish_place(scene));
  return in_degrees(terminator_spread(scene, key, dish_place(scene)));
}

Estimate read_figure(const Description& description, const Effort& effort, const std::string& name) {
  constexpr std::uint32_t kFirst = 64, kMost = 1u << 14;
  const Scene scene = std::move(build(description).scene);
  if (name == kSpread) return spread_deg(description, scene);
  const auto figures = figures_of(description, scene);
  const auto figure = std::ranges::find(figures, name, &NamedFigure::name);
  assert(figure != figures.end());
  const auto instruments = instruments_named(figure->instruments, description, scene);
  for (std::uint32_t samples = kFirst;; samples *= 2) {
    std::vector<Measurement> measured;
    for (const Instrument& each : instruments)
      measured.push_back(
          measure(scene, each.sensor, {.samples = samples, .seed = effort.seed, .threads = effort.threads}));
    const SetReading reading = set_reading_of(description, scene, instruments, std::move(measured));
    const Estimate value = figure->value({description, scene, reading}, effort);
    const bool enough = !(half_width(value, figure->unit) > effort.precision.si);
    if (enough || instruments.empty() || samples >= kMost) return value;
  }
}

}  // namespace

const Estimate& RuleBench::read(std::string_view set, const Edits& edits, const std::string& figure) const {
  const std::string name = fmt::format("{}|{}|{}", set, fmt::join(edits, "|"), figure);
  if (const auto known = kept_.find(name); known != kept_.end()) return known->second;
  const auto text = std::ranges::find(kRuleSets, set, [](const auto& each) { return each.first; });
  assert(text != kRuleSets.end());
  std::vector<Problem> warnings;  // the sets are ours
  const Description description =
      load_description_text(std::string(text->second), std::string(set), edits, warnings);
  return kept_.emplace(name, read_figure(description, effort_, figure)).first->second;
}

}  // namespace fillside::tools
