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

}  // namespace fillside::tools
