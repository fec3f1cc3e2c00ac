// What every written picture carries so that it can be made again: scene hash, seed, precision, version,
// command.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace fillside {

/// Keys and texts (UTF-8) in the order they are written. Keys: 1 to 79 printable ASCII characters.
using Metadata = std::vector<std::pair<std::string, std::string>>;

}  // namespace fillside
