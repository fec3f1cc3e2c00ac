// A word as a shell must see it.
#pragma once

#include <string>

namespace fillside::tools {

/// The word itself, or in single quotes where a shell would take it apart.
std::string for_shell(const std::string& word);

}  // namespace fillside::tools
