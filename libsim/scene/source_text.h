// What must hold of a scene's text before the TOML library may see it: that library lets an endless dotted
// key run the stack over, and says little about text that is no text.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "libsim/base/problem.h"

namespace fillside {

/// The first byte that is no letter: not UTF-8, or a NUL.
std::optional<Problem> fault_of_letters(std::string_view text, const std::string& file);
/// The first fault of a scene's text as such: empty, bytes that are not UTF-8, a NUL, a key of too many
/// parts.
std::optional<Problem> fault_of_text(std::string_view text, const std::string& file);

}  // namespace fillside
