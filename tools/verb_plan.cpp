#include "libsim/what_if/expected_readings.h"
#include "libsim/what_if/set_card.h"
#include "tools/cautions.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {

int run_plan(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  const Effort effort = effort_of(arguments, description, kMeterPrecision);
  const Scene set = open_set(description, arguments);
  ProgressBar bar("measuring", arguments.quiet);
  const SetReading reading = read_set(description, set, effort, bar.callback());
  const ExposurePlan plan = plan_exposure(description, set, reading);
  SetCard card = set_card(description);
  card.steps.push_back(check_step(reading, plan, expected_readings(reading, description.camera.aperture)));
  say(card_text(card));
  return kDone;
}

}  // namespace fillside::tools
