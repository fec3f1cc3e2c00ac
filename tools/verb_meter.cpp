#include <fmt/format.h>

#include "libsim/what_if/set_reading.h"
#include "tools/exit_status.h"
#include "tools/meter_json.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

void warn(const SetReading& set, const Effort& effort) {
  if (!set.reached)
    note(fmt::format("fillside: reached ±{:.3f} stop, not the wanted {}; give it more --seconds", set.reached_stops, to_text(effort.precision)));
  if (set.refused.count > 0)
    note(fmt::format("fillside: {} samples gave no finite number and were left out; one is element {}, replicate {}, sample {}",
                     set.refused.count, set.refused.element, set.refused.replicate, set.refused.sample));
}

void meter_one(const std::string& scene, const Arguments& arguments) {
  const Description description = open_description(scene, arguments);
  const Scene set = open_set(description, arguments);
  const Effort effort = effort_of(arguments, description, stops(0.05));
  const SetReading reading = [&] {
    ProgressBar bar("measuring", arguments.quiet);
    return read_set(description, set, effort, bar.callback());
  }();
  say(arguments.json ? meter_json(description, reading, effort) : meter_table(description, reading, effort));
  if (!arguments.quiet) warn(reading, effort);
}

}  // namespace

int run_meter(const Arguments& arguments) {
  for (const std::string& scene : arguments.scenes) meter_one(scene, arguments);
  return kDone;
}

}  // namespace fillside::tools
