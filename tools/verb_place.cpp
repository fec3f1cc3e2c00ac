#include <algorithm>
#include <iterator>

#include "libsim/what_if/place.h"
#include "tools/edited_scene.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/place_table.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

/// Small to large is the point of a list of sheets; a lone distance is wanted large; else the easy place.
Preference usual_preference(const std::vector<Freedom>& freedoms) {
  bool distance = false;
  for (const Freedom& freedom : freedoms) {
    if (freedom.is_choice() && freedom.choices.size() > 1) return Preference::smallest;
    distance = distance || freedom.key.ends_with("distance");
  }
  return distance ? Preference::farthest : Preference::easiest;
}

PlaceTask task_of(const Arguments& arguments, const EditedScene& scene) {
  PlaceTask task;
  task.describe = [&scene](const std::vector<std::string>& edits, std::vector<Problem>& why) {
    std::vector<Problem> found;
    auto description = scene.with(edits, "--move ", found);
    for (Problem& problem : found)
      if (problem.severity == Severity::error) why.push_back(std::move(problem));
    return description;
  };
  task.wants = arguments.wants;
  task.freedoms = arguments.freedoms;
  task.preference = arguments.preference.value_or(usual_preference(arguments.freedoms));
  task.allowed = {arguments.may_show, arguments.may_shade};
  return task;
}

bool names_nothing(const Problem& problem) {
  for (const char* words : {"is not a key of", "there is no", "there are no", "it may be"})
    if ((problem.message + problem.remedy).find(words) != std::string::npos) return true;
  return false;
}

/// Keys that no set has and values that no key takes, all at once and before the search. What only stands in
/// the way somewhere is the search's business.
void check_freedoms(const Arguments& arguments, const EditedScene& scene) {
  std::vector<Problem> faults;
  for (const Freedom& freedom : arguments.freedoms) {
    const std::size_t before = faults.size();
    for (const std::string& text :
         freedom.is_choice() ? freedom.choices : std::vector{freedom.text_at(0.0), freedom.text_at(1.0)}) {
      std::vector<Problem> found;
      scene.with({freedom.key + "=" + text}, "--move ", found);
      std::ranges::copy_if(found, std::back_inserter(faults), names_nothing);
      if (faults.size() > before) break;  // the other values have the same fault
    }
  }
  settle(std::move(faults), arguments);
}

}  // namespace

int run_place(const Arguments& arguments) {
  const EditedScene scene(arguments.scenes.front(), arguments);
  std::vector<Problem> problems;
  const auto description = scene.with({}, "", problems);
  settle(std::move(problems), arguments);
  check_freedoms(arguments, scene);
  const PlaceTask task = task_of(arguments, scene);
  const Effort effort = effort_of(arguments, *description, kPlacePrecision);
  ProgressBar bar("placing", arguments.quiet);
  const PlaceAnswer answer = find_place(task, effort, bar.callback());
  if (arguments.json)
    say_documents({place_json(*description, task, answer, effort)});
  else
    say(place_table(*description, task, answer, effort, arguments.edits));
  return answer.reached ? kDone : kAnswerIsNo;
}

}  // namespace fillside::tools
