#include <fmt/format.h>

#include "libsim/scene/canonical.h"
#include "libsim/scene/load.h"
#include "libsim/scene/made_once.h"
#include "tests/fuzz/laws.h"

namespace fillside::fuzz {
namespace {

/// What a text says once it is read, or the broken law that it is not read.
Description read_back(const std::string& text, const Description& written_from) {
  std::vector<Problem> warnings;
  try {
    return load_description_text(text, "/written/scene.toml", {}, warnings, written_from.made);
  } catch (const SceneError& error) {
    throw BrokenLaw(fmt::format("what was written is refused:\n{}\n{}", error.what(), text));
  }
}

}  // namespace

std::shared_ptr<MadeOnce> shared_stand_ins() {
  constexpr int kInputs = 64;  // then they are let go, so that memory does not grow
  static std::shared_ptr<MadeOnce> made;
  static int inputs = 0;
  if (inputs++ % kInputs == 0) made = std::make_shared<MadeOnce>();
  return made;
}

void keep_writing_laws(const Description& description) {
  const std::string written = canonical_scene(description, false);
  law(canonical_scene(read_back(written, description), false) == written,
      "written and read differs:\n" + written);
  const std::string full = canonical_scene(description, true);
  law(canonical_scene(read_back(full, description), false) == written,
      "written in full and read differs:\n" + full);
}

}  // namespace fillside::fuzz
