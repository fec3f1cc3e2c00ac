// Where everything stands.
#include "libsim/sensor/instruments.h"
#include "libsim/view/set_model.h"
#include "libsim/view/set_outline.h"
#include "libsim/what_if/picture_reading.h"
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

}  // namespace

PageSection plan_section(const Reported& reported) {
  PageSection section{"set", "The set", "", {}};
  section.blocks.push_back(room_of(reported));
  const ComparedSet& set = reported.sets.front();
  // PLACE OF THE SET PLAN AND THE CUT LIST: the drawing of writers/plan_sheet and its list go here, in the
  // place of this view from above.
  section.blocks.push_back(PagePlan{outlines_from_above(set.description, set.scene), "The set from above"});
  return section;
}

}  // namespace fillside::tools
