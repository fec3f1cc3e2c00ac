#include "tools/plan_answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

#include "libsim/scene/canonical.h"
#include "tools/cautions.h"
#include "tools/open_scene.h"

namespace fillside::tools {
namespace {

/// Cautions as notes; each starts with "  caution  ".
std::vector<std::string> caution_notes(const Description& description) {
  std::vector<std::string> notes;
  std::istringstream lines(cautions_for(description));
  for (std::string line; std::getline(lines, line);)
    if (const auto at = line.find("caution"); at != std::string::npos)
      notes.push_back("Caution: " + line.substr(at + std::string("caution  ").size()));
  return notes;
}

/// A line's words as they stand among others; empty where it says nothing to a builder.
std::string clause_of(const CardThing& thing, const CardLine& line) {
  const auto is = [&](std::initializer_list<std::string_view> labels) {
    return std::ranges::find(labels, line.label) != labels.end();
  };
  if (line.label == kCardAlso) return {};
  if (line.label == "middle" && thing.heading == "table") return line.remark;
  if (line.label == "middle" && line.words.starts_with("0.0 ")) return {};
  if (line.label == "leans" && line.words.starts_with("0.0 ")) return "upright";
  if (line.label == "glass") return line.words + " glass";
  const std::string remark = line.label == "lens" && !line.remark.empty() ? " (" + line.remark + ")" : "";
  const bool labelled = is({"wall", "top", "middle", "lens", "looks at", "focus", "curtain", "leans", "faces",
                            "turned", "folded", "covered", "bars", "switched"});
  return (labelled ? line.label + " " : "") + line.words + remark;
}

/// A thing's measures in one paragraph; what has no measure is left to the card.
std::string paragraph_of(const CardThing& thing) {
  std::string text = (thing.name.empty() ? thing.heading : thing.name) + ":";
  bool first = true;
  for (const CardLine& line : thing.lines) {
    const std::string clause = clause_of(thing, line);
    if (clause.empty()) continue;
    text += (first ? " " : "; ") + clause;
    first = false;
  }
  return text + ".";
}

std::vector<PlanText> measures_of(const SetCard& card) {
  std::vector<PlanText> texts;
  for (const CardStep& step : card.steps) {
    PlanText text{step.title, {}};
    for (const CardThing& thing : step.things)
      if (thing.heading != "set" && thing.heading != "daylight" && thing.heading != "room" &&
          thing.heading != "anchor" && thing.heading != "meter")
        text.paragraphs.push_back(paragraph_of(thing));
    if (!text.paragraphs.empty()) texts.push_back(std::move(text));
  }
  return texts;
}

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

PlanAnswer plan_answer(const Description& description, const Scene& set, SetReading reading,
                       const Effort& effort) {
  PlanAnswer answer{description, effort, std::move(reading), {}, {}, set_card(description)};
  answer.plan = plan_exposure(description, set, answer.reading);
  answer.readings = expected_readings(answer.reading, description.camera.aperture);
  CardStep& curtain = answer.card.steps.back();
  for (std::string& note : caution_notes(description)) curtain.notes.push_back(std::move(note));
  answer.card.steps.push_back(check_step(answer.reading, answer.plan, answer.readings));
  return answer;
}

std::string sheet_caption(const Description& description, const Effort& effort) {
  return fmt::format("{}: scene {}, {}, fillside {}", description.file, scene_hash(description),
                     effort_text(effort), FILLSIDE_VERSION);
}

PlanSheet plan_sheet_of(const PlanAnswer& answer) {
  const PlacedSet placed(answer.description);
  PlanSheet sheet{answer.description.set.title,
                  view_of_set(placed, ViewFrom::above),
                  view_of_set(placed, ViewFrom::six),
                  view_of_set(placed, ViewFrom::nine),
                  measures_of(answer.card),
                  {},
                  "Readings to check by",
                  readings_table(answer.readings),
                  {sheet_caption(answer.description, answer.effort)}};
  for (auto& row : sheet.readings) row.erase(row.begin() + 1);  // the receptor stands in the card's text
  if (std::ranges::all_of(answer.readings,
                          [](const ExpectedReading& r) { return r.how.ends_with("food away"); }))
    sheet.readings_heading += ", food taken away";
  const CardStep& check = answer.card.steps.back();
  sheet.remarks.push_back({"Exposure", {exposure_text(answer.plan)}});
  sheet.remarks.push_back({"As built?", check.last_notes});
  if (auto cautions = caution_notes(answer.description); !cautions.empty())
    sheet.remarks.push_back({"Take care", std::move(cautions)});
  return sheet;
}

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
