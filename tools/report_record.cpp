// The page's head, what to mind, and how it was made.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>
#include <sstream>

#include "libsim/scene/canonical.h"
#include "libsim/scene/wording.h"
#include "libsim/sensor/dials.h"
#include "libsim/what_if/set_remarks.h"
#include "tools/cautions.h"
#include "tools/meter_table.h"
#include "tools/report.h"

namespace fillside::tools {
namespace {

std::string upper_first(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string place_of(const Spot& spot) {
  if (!spot.clock) return "";
  return fmt::format(" at {}{}", to_text(*spot.clock),
                     spot.distance ? ", " + length_text(spot.distance->si) : std::string());
}

std::string board_text(const BoardSection& board) {
  return fmt::format("{} ({}){}", board.finish.surface, board.name, place_of(board.spot));
}

std::optional<PageFigure> edge_figure(const Reported& reported) {
  for (const ShadowEdge& edge : reported.shadows.front().edges)
    if (edge.width_mm)
      return PageFigure{"shadow edge", std::string(word_of(hardness_of(millimetres(edge.width_mm->value())))),
                        fmt::format("{:.0f} mm wide, of the {}", edge.width_mm->value(), edge.name)};
  return std::nullopt;
}

}  // namespace

std::string subtitle_of(const Description& d) {
  std::vector<std::string> parts{upper_first(d.daylight.sky) + " sky"};
  for (const WindowSection& window : d.windows)
    if (window.used)
      parts.push_back(fmt::format("{} at {}{}", window.name.empty() ? "window" : window.name,
                                  to_text(window.clock),
                                  window.distance ? ", " + length_text(window.distance->si) : std::string()));
  for (const LampSection& lamp : d.lamps)
    if (lamp.used && lamp.on) parts.push_back("lamp " + lamp.name);
  for (const BoardSection& board : d.boards)
    if (board.used) parts.push_back(board_text(board));
  return fmt::format("{}.", fmt::join(parts, "; "));
}

std::vector<PageFigure> key_figures(const Reported& reported) {
  std::vector<PageFigure> figures;
  const SetReading& first = reported.reading.sets.front();
  if (const auto ratio = first.subject_lit_to_shadow(); ratio && std::isfinite(ratio->value()))
    figures.push_back({"lit:shadow", fmt::format("{:.1f} : 1", ratio->value()),
                       fmt::format("{} stops, {}", with_error(in_stops(*ratio)),
                                   first.food_lit_to_shadow ? "on the food" : "in the empty spot")});
  if (std::isfinite(reported.plan.ev100)) {
    const Settings& base = reported.plan.start.at_base_iso;
    figures.push_back(
        {"expose", fmt::format("f/{:g} · {}", base.aperture.si, dial_text(base.shutter)),
         fmt::format("ISO {}{}", base.iso, reported.plan.start.steady_by_hand ? "" : ", from a tripod")});
  }
  if (const auto edge = edge_figure(reported)) figures.push_back(*edge);
  return figures;
}

/// "Board "fill": it is in the picture at the right; move it 4 cm farther from the dish."
std::string remark_text(const Problem& remark) {
  return upper_first(remark.message) + (remark.remedy.empty() ? "." : "; " + remark.remedy + ".");
}

/// What a look over the first set finds, then the cautions.
std::optional<PageSection> caution_section(const Reported& reported) {
  PageSection section{"care", "Take care", "", {}};
  const ComparedSet& set = reported.sets.front();
  const SetRemarks remarks = look_over(set.description, set.scene, reported.effort);
  PageList list;
  for (const std::vector<Problem>* found : {&remarks.warnings, &remarks.cautions})
    for (const Problem& remark : *found) list.items.push_back(remark_text(remark));
  for (const std::string& caution : caution_list(reported.description()))
    list.items.push_back(upper_first(caution) + ".");
  list.items.push_back(
      "fillside calculates light; it does not judge whether a set is safe. Follow the makers' instructions "
      "and local "
      "codes.");
  section.blocks.push_back(std::move(list));
  return section;
}

PageSection record_section(const Reported& reported) {
  PageSection section{
      "made", "How it was made", "Run the command again and the figures come out the same.", {}};
  PageFacts facts;
  facts.facts.push_back({"command", reported.arguments.command});
  facts.facts.push_back({"version", "fillside " FILLSIDE_VERSION});
  facts.facts.push_back(
      {"readings", fmt::format("{}; widest 95 % error bar of a change ±{:.3f} stop",
                               effort_text(reported.effort), reported.reading.reached_stops)});
  facts.facts.push_back(
      {"pictures", fmt::format("{} each: their grain depends on the machine, the figures do not",
                               effort_text(reported.picture_effort))});
  for (const ComparedSet& set : reported.sets)
    facts.facts.push_back(
        {reported.has_variants() ? "scene hash, " + set.name : "scene hash", scene_hash(set.description)});
  section.blocks.push_back(std::move(facts));
  for (const ComparedSet& set : reported.sets)
    section.blocks.push_back(PageCode{reported.has_variants() ? "The scene: " + set.name : "The scene",
                                      canonical_scene(set.description, false)});
  return section;
}

}  // namespace fillside::tools
