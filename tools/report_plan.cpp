// Where everything stands.
#include "libsim/sensor/instruments.h"
#include "libsim/view/set_model.h"
#include "libsim/what_if/cut_words.h"
#include "libsim/what_if/picture_reading.h"
#include "libsim/writers/picture_scaling.h"
#include "tools/plan_answer.h"
#include "tools/report.h"
#include "tools/stock_words.h"
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

/// Three quarters of the printed size: still to be read, at half the weight.
PagePicture drawn_plan(const PlanAnswer& answer) {
  const PrintedPage page = plan_page(plan_sheet_of(answer));
  return {scaled(picture_of(page), page.width * 3 / 4, page.height * 3 / 4),
          "The set from above and from two sides with every measure; all of it stands in the card below",
          "The plan. To print it: fillside plan"};
}

/// The boards that are there, cut from sheets of the catalogue; nothing when there are none to cut.
std::optional<PageCode> cut_code(const Description& description) {
  std::vector<Problem> problems;
  const CutList list = cut_list(description, {priced_stock({}, {}), 0.0}, problems);
  if (any_error(problems) || list.groups.empty()) return std::nullopt;
  return PageCode{"What to cut", cut_text(list, description.set.title)};
}

}  // namespace

PageSection plan_section(const Reported& reported) {
  PageSection section{"set", "The set", "", {}};
  section.blocks.push_back(room_of(reported));
  const ComparedSet& set = reported.sets.front();
  const PlanAnswer answer =
      plan_answer(set.description, set.scene, reported.reading.sets.front(), reported.effort);
  section.blocks.push_back(drawn_plan(answer));
  section.blocks.push_back(PageCode{"The card to build it from", card_text(answer.card)});
  if (auto cut = cut_code(set.description)) section.blocks.push_back(std::move(*cut));
  return section;
}

}  // namespace fillside::tools
