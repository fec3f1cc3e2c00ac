// The set as a lesson: what is varied, what is asked of it, and what a class does with it. It stands in the
// scene's file, beside the set; it is no part of the set, and changes none of its light.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

inline constexpr std::string_view kLessonHeading = "lesson", kLessonPhrase = "the lesson";

struct LessonSection : Section {
  std::string question, vary, figures, predict, build, answer;

  bool says_anything() const { return !vary.empty(); }
};

template <class V>
void fields(V&& v, LessonSection& s) {
  v(Field{"question", "what the lesson asks, in a sentence or two"}, s.question);
  v(Field{"vary",
          "what is varied, as after --vary of fillside series: \"board.card.distance=15cm,30cm,60cm\"; a "
          "second key after a semicolon"},
    s.vary);
  v(Field{"figures", "what is read of each, with commas between; left out: lit:shadow of the subject"},
    s.figures);
  v(Field{"predict", "what to draw or write before looking; a line break begins a paragraph"}, s.predict);
  v(Field{"build", "what to do with real boards and a camera"}, s.build);
  v(Field{"answer", "the explanation, for the answers alone"}, s.answer);
}

/// What stands under [lesson]; empty when nothing does. Appends a problem for each fault in it.
LessonSection describe_lesson(const SourceTree& tree, std::vector<Problem>& problems);

/// The lesson in the text that the description was read from, with the edits that were made then.
LessonSection lesson_in(const Description& description, const std::vector<std::string>& edits);

/// The lesson as it stands in a file, each key with its help; empty when there is none. To be set below
/// canonical_scene.
std::string canonical_lesson(const LessonSection& lesson);

}  // namespace fillside
