// A plan and a cut list for programs.
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "tools/plan_answer.h"

namespace fillside::tools {
namespace {

nlohmann::ordered_json estimate_json(const Estimate& figure) {
  return {{"value", figure.value()}, {"half_width_95", figure.half_width_95()}};
}

nlohmann::ordered_json steps_json(const SetCard& card) {
  nlohmann::ordered_json steps = nlohmann::ordered_json::array();
  for (const CardStep& step : card.steps) {
    nlohmann::ordered_json things = nlohmann::ordered_json::array();
    for (const CardThing& thing : step.things) {
      nlohmann::ordered_json lines = nlohmann::ordered_json::array();
      for (const CardLine& line : thing.lines)
        lines.push_back({{"label", line.label}, {"words", line.words}, {"remark", line.remark}});
      things.push_back({{"section", thing.heading}, {"name", thing.name}, {"measures", lines}});
    }
    steps.push_back({{"step", step.title}, {"notes", step.notes}, {"things", things}});
  }
  return steps;
}

}  // namespace

nlohmann::ordered_json plan_json(const PlanAnswer& answer) {
  nlohmann::ordered_json readings = nlohmann::ordered_json::array();
  for (const ExpectedReading& r : answer.readings)
    readings.push_back(
        {{"meter", r.meter},
         {"receptor", r.how},
         {"lx", estimate_json(r.lx)},
         {"ev100", estimate_json(r.ev100)},
         {"grey_card", r.grey_card ? nlohmann::ordered_json(to_text(*r.grey_card)) : nullptr}});
  return {{"schema", "fillside.plan/1"},
          {"scene", answer.description.file},
          {"scene_hash", scene_hash(answer.description)},
          {"title", answer.card.title},
          {"steps", steps_json(answer.card)},
          {"exposure", exposure_text(answer.plan)},
          {"readings", readings},
          {"as_built_within_stops", kAsBuilt.si}};
}

nlohmann::ordered_json cut_json(const Description& description, const CutList& list) {
  nlohmann::ordered_json sheets = nlohmann::ordered_json::array();
  for (const CutGroup& group : list.groups)
    for (const CutSheetLayout& layout : group.nesting.sheets) {
      nlohmann::ordered_json pieces = nlohmann::ordered_json::array(), cuts = nlohmann::ordered_json::array();
      for (const PlacedPiece& p : layout.pieces)
        pieces.push_back({{"board", group.pieces[p.piece].name},
                          {"left_m", p.left},
                          {"bottom_m", p.bottom},
                          {"width_m", p.width},
                          {"height_m", p.height},
                          {"turned", p.turned},
                          {"score", group.pieces[p.piece].scored}});
      for (const KnifeCut& cut : layout.cuts)
        cuts.push_back({{"upright", cut.upright}, {"at_m", cut.at}, {"from_m", cut.from}, {"to_m", cut.to}});
      sheets.push_back({{"material", group.material},
                        {"sheet", list.stock_of(layout).name},
                        {"best_possible", group.nesting.exact},
                        {"pieces", pieces},
                        {"cuts", cuts}});
    }
  return {{"schema", "fillside.cut/1"},
          {"scene", description.file},
          {"scene_hash", scene_hash(description)},
          {"sheets", sheets},
          {"waste", list.waste()},
          {"price", list.price ? nlohmann::ordered_json(*list.price) : nullptr}};
}

}  // namespace fillside::tools
