#include "tools/edited_scene.h"

#include <algorithm>
#include <iostream>
#include <iterator>

#include "libsim/scene/load.h"
#include "libsim/scene/made_once.h"
#include "libsim/scene/wording.h"
#include "tools/terminal.h"

namespace fillside::tools {

EditedScene::EditedScene(std::string scene, const Arguments& arguments)
    : scene_(std::move(scene)), edits_(arguments.edits), made_(std::make_shared<MadeOnce>()) {
  if (scene_ == "-") text_ = std::string{std::istreambuf_iterator<char>(std::cin), {}};
}

std::optional<Description> EditedScene::with(const std::vector<std::string>& edits, const std::string& place,
                                             std::vector<Problem>& problems) const {
  std::vector<std::string> all = edits_;
  all.insert(all.end(), edits.begin(), edits.end());
  std::vector<Problem> found;
  std::optional<Description> description;
  try {
    description = text_ ? load_description_text(*text_, "standard input", all, found, made_)
                        : load_description(scene_, all, found, made_);
  } catch (const SceneError& error) {
    found = error.problems();
  }
  for (Problem& problem : found) {
    for (const std::string& edit : edits)
      if (problem.place.file == "--set " + tame(edit)) problem.place.file = place + tame(edit);
    problems.push_back(std::move(problem));
  }
  return description;
}

void settle(std::vector<Problem> problems, const Arguments& arguments) {
  if (any_error(problems)) throw SceneError(std::move(problems));
  if (!arguments.quiet) show(in_order(std::move(problems)));
}

std::string file_word(std::string_view name) {
  std::string word(name);
  const auto is_plain = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' ||
           c == '-' || c == '_';
  };
  std::ranges::replace_if(
      word, [&](char c) { return !is_plain(c); }, '_');
  return word.substr(0, 80);
}

}  // namespace fillside::tools
