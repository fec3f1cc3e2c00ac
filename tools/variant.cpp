#include "tools/variant.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "libsim/scene/wording.h"
#include "tools/misuse.h"

namespace fillside::tools {
namespace {

std::string_view trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// Follows a text letter by letter through quotes and brackets.
class Nesting {
 public:
  /// Takes the next letter; true when it stands outside of all quotes and brackets.
  bool is_outside(char c) {
    const bool outside = quote_ == 0 && depth_ == 0;
    if (quote_ != 0)
      quote_ = c == quote_ ? '\0' : quote_;
    else if ((c == '"' || c == '\'') && opens_)  // not the one in baker's
      quote_ = c;
    else if (c == '[' || c == '{')
      ++depth_;
    else if ((c == ']' || c == '}') && depth_ > 0)
      --depth_;
    opens_ = std::string_view(" \t=.,:[{").find(c) != std::string_view::npos;
    return outside;
  }

 private:
  char quote_ = 0;
  int depth_ = 0;
  bool opens_ = true;
};

std::size_t find_outside(std::string_view text, char wanted) {
  Nesting nesting;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (nesting.is_outside(text[i]) && text[i] == wanted) return i;
  return std::string_view::npos;
}

}  // namespace

std::vector<std::string> split_list(std::string_view text, char separator) {
  std::vector<std::string> pieces;
  for (;;) {
    const std::size_t end = find_outside(text, separator);
    pieces.emplace_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return pieces;
    text.remove_prefix(end + 1);
  }
}

Variant parse_variant(const std::string& text) {
  Variant variant;
  std::string_view rest = text;
  if (const std::size_t colon = find_outside(rest, ':'); colon < find_outside(rest, '=')) {
    variant.name = trimmed(rest.substr(0, colon));
    rest.remove_prefix(colon + 1);
  }
  for (const std::string& piece : split_list(rest, ',')) {
    if (find_outside(piece, '=') != std::string_view::npos || variant.edits.empty())
      variant.edits.push_back(piece);
    else
      variant.edits.back() += ", " + piece;
  }
  if (find_outside(variant.edits.front(), '=') == std::string_view::npos)
    throw Misuse{fmt::format(
        "--variant: {} has no key=value; for example --variant \"no board: board.near.used=false\"",
        in_quotes(text))};
  if (variant.name.empty()) variant.name = fmt::format("{}", fmt::join(variant.edits, ", "));
  return variant;
}

}  // namespace fillside::tools
