// Ratios, whose light it is, and every reading.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/view/light_layers.h"
#include "libsim/what_if/comparison.h"
#include "tools/compare_table.h"
#include "tools/meter_table.h"
#include "tools/report.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string place_of(const Reading& reading) {
  if (reading.kind == ReadingKind::patch) return "on the food";
  return reading.subject_there ? "as it stands" : "empty spot";
}

std::string ratio_cell(const std::optional<Estimate>& ratio) {
  if (!ratio || !std::isfinite(ratio->value())) return "-";
  return fmt::format("{} : 1", with_error(*ratio));
}
std::string stops_cell(const std::optional<Estimate>& ratio) {
  return ratio ? with_error(in_stops(*ratio)) : "-";
}

PageTable ratios_table(const Reported& reported) {
  PageTable table{
      "lit:shadow: two readings, one facing the key and one facing away",
      {{"set"}, {"on the food", right}, {"stops", right}, {"in the empty spot", right}, {"stops", right}},
      {},
      ""};
  for (std::size_t i = 0; i < reported.sets.size(); ++i) {
    const SetReading& set = reported.reading.sets[i];
    table.rows.push_back({reported.sets[i].name, ratio_cell(set.food_lit_to_shadow),
                          stops_cell(set.food_lit_to_shadow), ratio_cell(set.empty_lit_to_shadow),
                          stops_cell(set.empty_lit_to_shadow)});
  }
  return table;
}

PageTable changes_table(const Reported& reported, std::size_t other) {
  const Comparison comparison = compare(reported.reading.sets.front(), reported.reading.sets[other]);
  PageTable table{
      fmt::format("What \"{}\" changes against \"{}\"", reported.sets[other].name,
                  reported.sets.front().name),
      {{"reading"}, {"before, lx", right}, {"after, lx", right}, {"change, stops", right}, {"seen?"}},
      {},
      ""};
  for (const MeterChange& each : comparison.meters)
    table.rows.push_back({each.name, with_error(each.reference_lx), with_error(each.lx),
                          change_text(each.change_stops), std::string(word_of(seen(each.change_stops)))});
  for (const RatioChange& each : comparison.ratios)
    table.rows.push_back({each.name, with_error(each.reference) + " : 1", with_error(each.ratio) + " : 1",
                          change_text(each.change_stops), std::string(word_of(seen(each.change_stops)))});
  return table;
}

PageTable readings_table(const Reported& reported, std::size_t index) {
  PageTable table{
      fmt::format("Every reading{}", reported.has_variants() ? ": " + reported.sets[index].name : ""),
      {{"reading"},
       {"where"},
       {"lx", right},
       {"EV100", right},
       {"key lx", right},
       {"fill lx", right},
       {"key:fill", right}},
      {},
      ""};
  for (const Reading& r : reported.reading.sets[index].readings)
    table.rows.push_back({r.name, place_of(r), with_error(r.total_lx), with_error(r.ev100),
                          with_error(r.key_lx), with_error(r.fill_lx),
                          std::isfinite(r.key_to_fill.value()) ? with_error(r.key_to_fill) : "-"});
  return table;
}

/// The patches, the flat disc in the dish's place, and meters of the scene's own: not the four that only
/// serve.
bool is_told(const Reading& reading) {
  const std::string_view name = reading.name;
  return !(name == kDishWindow || name == kDishAway || name == kDishCamera || name == kDishDome);
}

PageBars::Bar bar_of(const Reported& reported, std::size_t set, std::size_t index,
                     const std::vector<std::string>& parts) {
  const SetReading& reading = reported.reading.sets[set];
  const Reading& r = reading.readings[index];
  const auto layers = light_layers(reported.sets[set].scene, reading.key);
  PageBars::Bar bar{
      r.name, reported.has_variants() ? reported.sets[set].name : "", with_error(r.total_lx), {}, {}};
  for (const std::string& part : parts) {
    const auto layer = std::ranges::find(layers, part, &LightLayer::name);
    const Estimate lx =
        layer == layers.end() ? Estimate(0.0) : reading.measurements[index].sum(0, layer->rows);
    bar.shares.push_back(r.total_lx.value() > 0.0 ? lx.value() / r.total_lx.value() : 0.0);
    bar.texts.push_back(layer == layers.end() ? "-" : with_error(lx));
  }
  return bar;
}

PageBars bars_of(const Reported& reported) {
  const auto parts = parts_of_light(reported);
  PageBars bars{"Who lights what", parts, {}};
  const SetReading& first = reported.reading.sets.front();
  for (const Reading& r : first.readings) {
    if (!is_told(r)) continue;
    for (std::size_t set = 0; set < reported.sets.size(); ++set) {
      const auto& readings = reported.reading.sets[set].readings;
      const auto same = std::ranges::find(readings, r.name, &Reading::name);
      if (same != readings.end())
        bars.bars.push_back(bar_of(reported, set, static_cast<std::size_t>(same - readings.begin()), parts));
    }
  }
  return bars;
}

}  // namespace

std::vector<std::string> parts_of_light(const Reported& reported) {
  std::vector<std::string> names;
  for (std::size_t set = 0; set < reported.sets.size(); ++set) {
    const SetReading& reading = reported.reading.sets[set];
    for (const LightLayer& layer : light_layers(reported.sets[set].scene, reading.key)) {
      const bool lights = std::ranges::any_of(
          reading.measurements, [&](const Measurement& m) { return m.sum(0, layer.rows).value() > 0.0; });
      if (lights && std::ranges::find(names, layer.name) == names.end()) names.push_back(layer.name);
    }
  }
  // Food and room come last, also where a variant has a board that the first set lacks.
  std::stable_partition(names.begin(), names.end(),
                        [](const std::string& name) { return name != "food" && name != "ambient"; });
  return names;
}

PageSection light_section(const Reported& reported) {
  PageSection section{
      "light",
      "The light",
      "Key is the window's own light, fill is everything else. On the food is not in its empty spot: "
      "food shades its own table.",
      {}};
  section.blocks.push_back(ratios_table(reported));
  section.blocks.push_back(bars_of(reported));
  for (std::size_t other = 1; other < reported.sets.size(); ++other)
    section.blocks.push_back(changes_table(reported, other));
  for (std::size_t set = 0; set < reported.sets.size(); ++set)
    section.blocks.push_back(readings_table(reported, set));
  section.blocks.push_back(
      PageText{"± is the 95 % interval. From a third of a stop on, a change is called visible. "
               "key:fill splits one reading; it is never the same number as lit:shadow.",
               true});
  return section;
}

}  // namespace fillside::tools
