// What this program was made with, for `--version`: compiler, kind of build, and every library with its
// version.
#pragma once

#include <string>

namespace fillside::tools {

/// Some lines of at most 80 columns.
std::string built_with();

}  // namespace fillside::tools
