// One scene opened several times, each time with other edits, all its faults told together.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "tools/arguments.h"

namespace fillside::tools {

class EditedScene {
 public:
  /// "-" is read here, once.
  EditedScene(std::string scene, const Arguments& arguments);

  /// With these edits after those of --set. Faults and warnings are appended to `problems`; those of the
  /// edits themselves are placed at `place` instead of at --set. Nothing when there is a fault.
  std::optional<Description> with(const std::vector<std::string>& edits, const std::string& place,
                                  std::vector<Problem>& problems) const;

 private:
  std::string scene_;
  std::optional<std::string> text_;  ///< of standard input
  std::vector<std::string> edits_;
  std::shared_ptr<MadeOnce> made_;  ///< stand-ins and pictures that all of them have in common
};

/// Throws SceneError when one of them is an error; else shows the warnings, each once, unless quiet.
void settle(std::vector<Problem> problems, const Arguments& arguments);

/// A name as part of a file's: what is no letter, digit, dot, '-' or '_' becomes '_'.
std::string file_word(std::string_view name);

}  // namespace fillside::tools
