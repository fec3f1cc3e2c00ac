#include "tools/meter_json.h"

#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "tools/exposure_block.h"
#include "tools/figure_json.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

Json row(const RowFigure& row) {
  return {{"source", row.source},
          {"via", row.via},
          {"counts_as", row.key ? "key" : "fill"},
          {"lx", figure_json(row.lx)},
          {"colour_K", row.colour_K ? figure_json(*row.colour_K) : Json(nullptr)}};
}

Json meter(const Reading& reading) {
  Json rows = Json::array();
  for (const RowFigure& each : reading.rows) rows.push_back(row(each));
  return {{"name", reading.name},
          {"receptor", receptor_word(reading.kind)},
          {"subject_there", reading.subject_there},
          {"total_lx", figure_json(reading.total_lx)},
          {"rows", rows},
          {"key_lx", figure_json(reading.key_lx)},
          {"fill_lx", figure_json(reading.fill_lx)},
          {"key_to_fill", figure_json(reading.key_to_fill)},
          {"ev100", figure_json(reading.ev100)},
          {"colour_K", reading.colour_K ? figure_json(*reading.colour_K) : Json(nullptr)}};
}

Json ratio(const std::optional<Estimate>& lit_to_shadow) {
  if (!lit_to_shadow) return nullptr;
  return {{"lit_to_shadow", figure_json(*lit_to_shadow)}, {"stops", figure_json(in_stops(*lit_to_shadow))}};
}

Json anchor_json(const std::optional<Anchor>& anchor) {
  if (!anchor) return nullptr;
  return {
      {"meter", anchor->meter},   {"reading", anchor->reading},        {"wanted_lx", anchor->wanted.si},
      {"factor", anchor->factor}, {"moved_stops", anchor->moved().si}, {"plausible", anchor->is_plausible()}};
}

}  // namespace

Json meter_json(const Description& description, const SetReading& set, const Effort& effort,
                const ExposurePlan& plan) {
  Json meters = Json::array();
  for (const Reading& reading : set.readings) meters.push_back(meter(reading));
  Json subject = ratio(set.subject_lit_to_shadow());
  if (!subject.is_null()) subject["read"] = set.food_lit_to_shadow ? "on the food" : "empty spot";
  return {{"schema", "fillside.meter/1"},
          {"scene", description.file},
          {"title", description.set.title},
          {"scene_hash", scene_hash(description)},
          {"seed", effort.seed},
          {"key", set.key_name},
          {"precision_stops", effort.precision.si},
          {"reached_stops", set.reached_stops},
          {"samples_per_replicate", set.samples_per_replicate},
          {"replicates", kMostReplicates},
          {"refused_samples", set.refused.count},
          {"meters", meters},
          {"subject", subject},
          {"on_the_food", ratio(set.food_lit_to_shadow)},
          {"empty_spot", ratio(set.empty_lit_to_shadow)},
          {"anchor", anchor_json(set.anchor)},
          {"exposure", exposure_json(plan)}};
}

}  // namespace fillside::tools
