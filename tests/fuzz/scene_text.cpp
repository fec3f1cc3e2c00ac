#include "libsim/scene/build.h"
#include "libsim/scene/load.h"
#include "tests/fuzz/harnesses.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

/// Few things, and none of them read from a file: built in a moment.
bool is_small(const Description& set) {
  return set.items.size() <= 1 && set.meshes.empty() && set.boards.size() <= 2 && set.windows.size() <= 2 &&
         set.diffusers.size() <= 1 && set.lamps.size() <= 2;
}

}  // namespace

void scene_text(std::string_view input) {
  const int lines = line_count(input);
  std::vector<Problem> warnings;
  try {
    const Description set =
        load_description_text(std::string(input), "/nowhere/set.toml", {}, warnings, shared_stand_ins());
    keep_problem_laws(warnings, lines);
    keep_writing_laws(set);
    if (is_small(set)) keep_problem_laws(build(set).warnings, lines);
  } catch (const SceneError& error) {
    keep_refusal_laws(error, lines);
  }
}

}  // namespace fillside::fuzz
