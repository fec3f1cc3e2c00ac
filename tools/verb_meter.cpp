#include <fmt/format.h>

#include "libsim/what_if/set_reading.h"
#include "tools/cautions.h"
#include "tools/exit_status.h"
#include "tools/exposure_block.h"
#include "tools/light_blocks.h"
#include "tools/meter_json.h"
#include "tools/meter_table.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

/// A set with all that was asked of it.
struct Read {
  SetReading reading;
  ExposurePlan plan;
  White white;
  std::optional<Shadows> shadows;
  std::optional<Relief> relief;
};

Read read_one(const Description& description, const Effort& effort, const Arguments& arguments) {
  const Scene set = open_set(description, arguments);
  ProgressBar bar("measuring", arguments.quiet);
  Read read{read_set(description, set, effort, bar.callback()), {}, {}, {}, {}};
  read.plan = plan_exposure(description, set, read.reading);
  read.white = white_of(description, read.reading);
  if (arguments.shadows) read.shadows = read_shadows(description, set, read.reading, effort);
  if (arguments.relief) read.relief = read_relief(set, read.reading, effort);
  return read;
}

std::string text_of(const Description& description, const Read& read, const Effort& effort,
                    const Arguments& arguments) {
  std::string text = meter_table(description, read.reading, effort, read.plan);
  if (arguments.exposure) text += exposure_block(read.plan);
  if (read.shadows) text += shadows_block(*read.shadows);
  if (read.relief) text += relief_block(*read.relief);
  if (arguments.casts) text += casts_block(read.reading, read.white);
  return text + (arguments.quiet ? "" : lamp_cautions_for(description));
}

nlohmann::ordered_json json_of(const Description& description, const Read& read, const Effort& effort,
                               const Arguments& arguments) {
  nlohmann::ordered_json document = meter_json(description, read.reading, effort, read.plan);
  if (read.shadows) document["shadows"] = shadows_json(*read.shadows);
  if (read.relief) document["relief"] = relief_json(*read.relief);
  if (arguments.casts) document["casts"] = casts_json(read.reading, read.white);
  return document;
}

}  // namespace

int run_meter(const Arguments& arguments) {
  std::vector<nlohmann::ordered_json> documents;
  bool first = true;
  for (const Description& description : open_descriptions(arguments)) {
    const Effort effort = effort_of(arguments, description, kMeterPrecision);
    const Read read = read_one(description, effort, arguments);
    if (arguments.json) {
      documents.push_back(json_of(description, read, effort, arguments));
    } else {
      if (!first) say("\n");
      say(text_of(description, read, effort, arguments));
    }
    first = false;
    note_shortfall(arguments, effort, read.reading.reached_stops, "");
    note_refused(arguments, read.reading.refused);
  }
  if (arguments.json) say_documents(documents);
  return kDone;
}

}  // namespace fillside::tools
