// The only door to the TOML library: text in, source tree out. Neither this nor anything after it writes to a
// person's file.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "libsim/base/limits.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

/// Reads TOML. `name` stands in messages. Throws SceneError with line and column when it is not TOML, not
/// UTF-8, empty, too long or holds a NUL byte. Infinities and NaN pass: the describer refuses them with
/// everything else.
SourceTree read_scene_text(std::string text, std::string name);

/// Reads a file the same way; also refuses a missing file, a folder, and a file that is too long before
/// reading it.
SourceTree read_scene_file(const std::string& path);

/// The single value a text stands for (`0.7`, `true`, `"a"`, `{ a = "b" }`); nothing when it is no TOML
/// value.
std::optional<SourceValue> read_value(std::string_view text);

}  // namespace fillside
