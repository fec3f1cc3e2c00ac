// The man pages, in scdoc's language.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace fillside::tools {

/// "fillside": the command, section 1; "fillside-scene": the scene language, section 5. Nothing for another.
std::optional<std::string> manual_page(std::string_view page);

}  // namespace fillside::tools
