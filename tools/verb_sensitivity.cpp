#include <algorithm>

#include "libsim/scene/spelt_out.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/sensitivity.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/sensitivity_table.h"
#include "tools/terminal.h"
#include "tools/verbs.h"

namespace fillside::tools {
namespace {

void refuse_unknown_figures(const Arguments& arguments, const Description& description, const Scene& scene,
                            std::vector<Problem>& problems) {
  std::vector<std::string> names;
  for (const NamedFigure& figure : figures_of(description, scene)) names.push_back(figure.name);
  for (const std::string& name : arguments.figures)
    if (std::ranges::find(names, name) == names.end())
      problems.push_back(problem_at({"--of " + tame(name), 0, 0}, "there is no such figure",
                                    suggestion(name, in_families(names), "there are")));
}

void refuse_idle_patterns(const SensitivityTask& task, const std::vector<NumericKey>& all,
                          std::vector<Problem>& problems) {
  std::vector<std::string> paths;
  for (const NumericKey& key : all) paths.push_back(key.path);
  for (const std::string& pattern : task.patterns)
    if (std::ranges::none_of(paths, [&](const std::string& path) { return fits(path, pattern); }))
      problems.push_back(problem_at({"--keys " + tame(pattern), 0, 0},
                                    "no number of this set that can be varied is called so",
                                    suggestion(pattern, paths, "there are")));
}

void take_off_by(const std::string& text, const std::vector<NumericKey>& all, SensitivityTask& task,
                 std::vector<Problem>& problems) {
  const Place place{"--off-by " + tame(text), 0, 0};
  const auto equals = text.rfind('=');
  const std::string path = text.substr(0, equals);
  const auto key = std::ranges::find(all, path, &NumericKey::path);
  if (key == all.end()) {
    std::vector<std::string> paths;
    for (const NumericKey& each : all) paths.push_back(each.path);
    problems.push_back(problem_at(place, "no number of this set that can be varied is called so",
                                  suggestion(path, paths, "there are")));
    return;
  }
  std::string example;
  if (const auto amount = parse_uncertainty(*key, text.substr(equals + 1), example))
    task.off_by[path] = *amount;
  else
    problems.push_back(problem_at(place, "this is not how far it may be off",
                                  "write a positive amount, for example " + path + "=" + example));
}

SensitivityTask task_of(const Arguments& arguments, const Description& description, const Scene& scene) {
  std::vector<Problem> problems;
  SensitivityTask task{arguments.figures, {}, {}};
  const std::vector<NumericKey> all = varied_keys(description, task);
  task.patterns = arguments.keys;
  refuse_unknown_figures(arguments, description, scene, problems);
  refuse_idle_patterns(task, all, problems);
  for (const std::string& text : arguments.off_by) take_off_by(text, all, task, problems);
  if (!problems.empty()) throw SceneError(std::move(problems));
  return task;
}

}  // namespace

int run_sensitivity(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  const Scene scene = open_set(description, arguments);
  const SensitivityTask task = task_of(arguments, description, scene);
  const Effort effort = effort_of(arguments, description, kSensitivityPrecision);
  const Sensitivity answer = [&] {
    ProgressBar bar("varying", arguments.quiet);
    return read_sensitivity(description, task, effort, bar.callback());
  }();
  if (!answer.reached_precision) note_shortfall(arguments, effort, answer.reached, " of what an input moves");
  if (arguments.json)
    say_documents({sensitivity_json(description, answer, effort)});
  else
    say(sensitivity_table(description, answer, effort));
  return kDone;
}

}  // namespace fillside::tools
