#include "libsim/scene/lesson.h"

#include "libsim/scene/edit.h"
#include "libsim/scene/toml_reader.h"

namespace fillside {

LessonSection lesson_in(const Description& description, const std::vector<std::string>& edits) {
  std::vector<Problem> told_when_it_was_loaded;
  SourceTree tree = read_scene_text(description.text, description.file);
  for (const std::string& edit : edits) apply_edit(tree, edit, told_when_it_was_loaded);
  return describe_lesson(tree, told_when_it_was_loaded);
}

}  // namespace fillside
