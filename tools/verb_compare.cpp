#include <nlohmann/json.hpp>

#include "tools/compare_files.h"
#include "tools/compare_json.h"
#include "tools/compare_table.h"
#include "tools/exit_status.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

SharedReading read(const std::vector<ComparedSet>& sets, const Effort& effort, bool quiet) {
  std::vector<SetBeside> beside;
  for (const ComparedSet& set : sets) beside.push_back({set.description, set.scene});
  ProgressBar bar("comparing", quiet);
  return read_shared(beside, effort, bar.callback());
}

}  // namespace

int run_compare(const Arguments& arguments) {
  const std::vector<ComparedSet> sets = open_compared(arguments);
  const auto figures = wanted_differences(arguments, sets);
  if (!figures.empty() || arguments.pictures) make_folder(arguments.folder);  // before the measuring
  const Effort effort = effort_of(arguments, sets.front().description, kComparePrecision);
  const SharedReading reading = read(sets, effort, arguments.quiet);
  std::vector<Comparison> comparisons;
  for (std::size_t i = 1; i < sets.size(); ++i)
    comparisons.push_back(compare(reading.sets.front(), reading.sets[i]));
  if (!arguments.json) say(compare_table(sets, comparisons, reading, effort));
  nlohmann::ordered_json document;
  if (arguments.json) document = compare_json(sets, comparisons, reading, effort);
  document["files"]["maps"] = write_differences(arguments, sets, reading, figures);
  if (arguments.pictures) document["files"]["pictures"] = write_side_by_side(arguments, sets, reading);
  if (arguments.json) say_documents({document});
  note_shortfall(arguments, effort, reading.reached_stops, " in every change");
  for (const SetReading& set : reading.sets) note_refused(arguments, set.refused);
  return kDone;
}

}  // namespace fillside::tools
