// Completion of verbs and options in a shell.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace fillside::tools {

/// The script for "bash", "zsh" or "fish"; nothing for another shell.
std::optional<std::string> completion_for(std::string_view shell);

}  // namespace fillside::tools
