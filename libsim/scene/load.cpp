#include "libsim/scene/load.h"

#include "libsim/scene/check.h"
#include "libsim/scene/describe.h"
#include "libsim/scene/edit.h"
#include "libsim/scene/limits.h"
#include "libsim/scene/made_once.h"
#include "libsim/scene/toml_reader.h"

namespace fillside {
namespace {

Description load(SourceTree tree, const std::vector<std::string>& edits, std::vector<Problem>& warnings,
                 std::shared_ptr<MadeOnce> made) {
  std::vector<Problem> problems;
  for (const std::string& edit : edits) apply_edit(tree, edit, problems);
  Description description = describe(tree, problems);
  description.made = made ? std::move(made) : std::make_shared<MadeOnce>();
  if (!any_error(problems)) {
    const auto found = check(description);
    problems.insert(problems.end(), found.begin(), found.end());
  }
  if (any_error(problems)) throw SceneError(shortened(std::move(problems)));
  problems = shortened(std::move(problems));
  warnings.insert(warnings.end(), problems.begin(), problems.end());
  return description;
}

}  // namespace

Description load_description(const std::string& path, const std::vector<std::string>& edits,
                             std::vector<Problem>& warnings, std::shared_ptr<MadeOnce> made) {
  return load(read_scene_file(path), edits, warnings, std::move(made));
}

Description load_description_text(std::string text, std::string name, const std::vector<std::string>& edits,
                                  std::vector<Problem>& warnings, std::shared_ptr<MadeOnce> made) {
  return load(read_scene_text(std::move(text), std::move(name)), edits, warnings, std::move(made));
}

Description load_description_tree(SourceTree tree, std::vector<Problem>& warnings) {
  return load(std::move(tree), {}, warnings, {});
}

}  // namespace fillside
