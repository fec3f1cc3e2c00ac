// A variant of a scene in one word of the command: "no board: board.near.used=false, room.walls=0.3".
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fillside::tools {

struct Variant {
  std::string name;                ///< what stands before the colon, else the edits
  std::vector<std::string> edits;  ///< each as after --set
};

/// Throws Misuse when there is no key=value in it. A comma within quotes or brackets, or before something
/// without '=', belongs to the value.
Variant parse_variant(const std::string& text);

/// The text in pieces, blanks around them taken off; not cut within quotes or brackets.
std::vector<std::string> split_list(std::string_view text, char separator);

}  // namespace fillside::tools
