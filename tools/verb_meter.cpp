#include <fmt/format.h>

#include "libsim/what_if/set_reading.h"
#include "tools/cautions.h"
#include "tools/exit_status.h"
#include "tools/meter_json.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

SetReading read_one(const Description& description, const Effort& effort, const Arguments& arguments) {
  const Scene set = open_set(description, arguments);
  ProgressBar bar("measuring", arguments.quiet);
  return read_set(description, set, effort, bar.callback());
}

}  // namespace

int run_meter(const Arguments& arguments) {
  std::vector<nlohmann::ordered_json> documents;
  bool first = true;
  for (const Description& description : open_descriptions(arguments)) {
    const Effort effort = effort_of(arguments, description, kMeterPrecision);
    const SetReading reading = read_one(description, effort, arguments);
    if (arguments.json)
      documents.push_back(meter_json(description, reading, effort));
    else
      say(fmt::format("{}{}", first ? "" : "\n", meter_table(description, reading, effort)) +
          (arguments.quiet ? "" : lamp_cautions_for(description)));
    first = false;
    note_shortfall(arguments, effort, reading.reached_stops, "");
    note_refused(arguments, reading.refused);
  }
  if (arguments.json) say_documents(documents);
  return kDone;
}

}  // namespace fillside::tools
