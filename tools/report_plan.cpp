// Where everything stands.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include "libsim/sensor/instruments.h"
#include "libsim/view/set_model.h"
#include "libsim/what_if/cut_words.h"
#include "libsim/what_if/picture_reading.h"
#include "tools/plan_answer.h"
#include "tools/report.h"
#include "tools/terminal.h"

namespace fillside::tools {
namespace {

constexpr std::size_t kMostTriangles = 14000;
constexpr int kStillWidth = 420, kStillHeight = 280;

/// A still of the whole set, lit as it is.
PageRoom room_of(const Reported& reported) {
  const ComparedSet& set = reported.sets.front();
  const SetReading& reading = reported.reading.sets.front();
  const Camera& camera = reported.pictures.front().camera;
  const Camera view = camera_on_the_set(set.scene, camera, toward_window(set.scene, reading.key.emitter),
                                        kStillWidth, kStillHeight);
  Effort effort = reported.picture_effort;
  if (effort.seconds) effort.seconds = seconds(0.4 * effort.seconds->si);
  ProgressBar bar("looking at the set", reported.arguments.quiet);
  PictureReading taken = take_picture(set.scene, view, effort, bar.callback());
  taken.measurement.scale(reading.light_factor());
  FixedExposure brighter = reported.exposure;  // the room is darker than the dish
  brighter.metered = brighter.metered / 2.0;
  return {developed_at(brighter, taken.measurement),
          "The set from the photographer's side, a stop brighter than the picture",
          model_of(set.scene, camera, kMostTriangles)};
}

/// The sheet of fillside plan, for the first set.
PageDrawing plan_of(const PlanAnswer& answer) {
  return {bytes_of(plan_page(plan_sheet_of(answer)), SheetFile::svg, {}),
          "The set from above and from two sides, with its measures and the readings to check it by",
          "To scale on A4, and with the words below to build it by: fillside plan"};
}

std::string cuts_text(const CutList& list, const CutGroup& group, const CutSheetLayout& sheet) {
  std::vector<std::string> words;
  for (const PlacedPiece& piece : sheet.pieces) words.push_back(piece_text(group.pieces[piece.piece]));
  std::string text = fmt::format("{}", fmt::join(words, "; "));
  for (const KnifeCut& cut : sheet.cuts) text += "; cut " + knife_text(cut, list.stock_of(sheet));
  return text;
}

/// Which sheets to buy and how to cut them; nothing without boards, or where one fits no sheet.
void add_cut_list(const Description& description, PageSection& section) {
  std::vector<Problem> problems;
  const CutList list = cut_list(description, {}, problems);
  if (!problems.empty() || list.sheet_count() == 0) return;
  PageFacts facts;
  for (const CutGroup& group : list.groups)
    for (const CutSheetLayout& sheet : group.nesting.sheets)
      facts.facts.push_back(
          {group.material + ", " + stock_text(list.stock_of(sheet)), cuts_text(list, group, sheet)});
  section.blocks.push_back(PageText{"Boards to cut: " + bill_text(list) + "."});
  section.blocks.push_back(std::move(facts));
}

}  // namespace

PageSection plan_section(const Reported& reported) {
  PageSection section{"set", "The set", "", {}};
  section.blocks.push_back(room_of(reported));
  const ComparedSet& set = reported.sets.front();
  const PlanAnswer answer =
      plan_answer(set.description, set.scene, reported.reading.sets.front(), reported.effort);
  section.blocks.push_back(plan_of(answer));
  add_cut_list(set.description, section);
  section.blocks.push_back(
      PageCode{"The set in words; fillside plan --back makes a scene of them", card_text(answer.card)});
  return section;
}

}  // namespace fillside::tools
