#include "libsim/scene/lesson.h"

#include "libsim/scene/toml_reader.h"

namespace fillside {

LessonSection lesson_in(const Description& description) {
  std::vector<Problem> told_when_it_was_loaded;
  return describe_lesson(read_scene_text(description.text, description.file), told_when_it_was_loaded);
}

}  // namespace fillside
