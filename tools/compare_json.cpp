#include "tools/compare_json.h"

#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "tools/figure_json.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

Json set_json(const ComparedSet& set, const SetReading& reading) {
  return {{"name", set.name},
          {"scene", set.description.file},
          {"edits", set.edits},
          {"title", set.description.set.title},
          {"scene_hash", scene_hash(set.description)},
          {"key", reading.key_name},
          {"anchor_factor", reading.anchor ? Json(reading.anchor->factor) : Json(nullptr)}};
}

Json cause_json(const Cause& cause) {
  return {{"source", cause.source},
          {"via", cause.via},
          {"change_lx", figure_json(cause.change_lx)},
          {"change_stops", figure_json(cause.change_stops)}};
}

Json meter_json(const MeterChange& change) {
  Json causes = Json::array();
  for (const Cause& cause : change.causes) causes.push_back(cause_json(cause));
  return {{"name", change.name},
          {"receptor", receptor_word(change.kind)},
          {"subject_there", change.subject_there},
          {"reference_lx", figure_json(change.reference_lx)},
          {"lx", figure_json(change.lx)},
          {"change_stops", figure_json(change.change_stops)},
          {"seen", word_of(seen(change.change_stops))},
          {"key_to_fill_change_stops", figure_json(change.key_to_fill_stops)},
          {"causes", causes}};
}

Json ratio_json(const RatioChange& change) {
  return {{"name", change.name},
          {"reference", figure_json(change.reference)},
          {"ratio", figure_json(change.ratio)},
          {"change_stops", figure_json(change.change_stops)},
          {"seen", word_of(seen(change.change_stops))}};
}

Json comparison_json(const ComparedSet& set, const SetReading& reading, const Comparison& comparison) {
  Json document = set_json(set, reading);
  document["nothing_differs"] = comparison.nothing_differs();
  document["widest_half_width_95_stops"] = comparison.widest_stops();
  document["meters"] = Json::array();
  for (const MeterChange& each : comparison.meters) document["meters"].push_back(meter_json(each));
  document["ratios"] = Json::array();
  for (const RatioChange& each : comparison.ratios) document["ratios"].push_back(ratio_json(each));
  document["only_in_reference"] = comparison.only_in_reference;
  document["only_here"] = comparison.only_in_other;
  return document;
}

}  // namespace

Json compare_json(const std::vector<ComparedSet>& sets, const std::vector<Comparison>& comparisons,
                  const SharedReading& reading, const Effort& effort) {
  Json others = Json::array();
  for (std::size_t i = 0; i < comparisons.size(); ++i)
    others.push_back(comparison_json(sets[i + 1], reading.sets[i + 1], comparisons[i]));
  return {{"schema", "fillside.compare/1"},
          {"seed", effort.seed},
          {"precision_stops", effort.precision.si},
          {"reached_stops", reading.reached_stops},
          {"visible_from_stops", kVisibleDifference.si},
          {"reference", set_json(sets.front(), reading.sets.front())},
          {"comparisons", others}};
}

}  // namespace fillside::tools
