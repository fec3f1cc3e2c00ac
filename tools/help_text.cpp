#include "tools/help_text.h"

#include <algorithm>

namespace fillside::tools {
namespace {

constexpr std::size_t kWidestTerm = 24;

/// `text` from column `start` on, later lines from column `indent` on.
std::string broken(std::string_view text, std::size_t start, std::size_t indent) {
  std::string out;
  std::size_t column = start;
  while (!text.empty()) {
    const std::size_t length = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, length);
    text.remove_prefix(std::min(length + 1, text.size()));
    if (column > start && column + 1 + word.size() > kHelpColumns) {
      out += '\n' + std::string(indent, ' ');
      column = start = indent;
    }
    if (column > start) out += ' ', ++column;
    out += word;
    column += word.size();
  }
  return out + '\n';
}

}  // namespace

std::string wrapped(std::string_view text, std::size_t indent) { return broken(text, 0, indent); }

std::string help_list(std::string_view heading, const std::vector<HelpLine>& lines) {
  std::size_t widest = 0;
  for (const HelpLine& line : lines) widest = std::max(widest, std::min(line.term.size(), kWidestTerm));
  const std::size_t meaning_column = widest + 4;
  std::string out = std::string(heading) + ":\n";
  for (const auto& [term, meaning] : lines) {
    out += "  " + term;
    if (term.size() > widest)
      out += '\n' + std::string(meaning_column, ' ');
    else
      out += std::string(meaning_column - 2 - term.size(), ' ');
    out += broken(meaning, meaning_column, meaning_column);
  }
  return out;
}

}  // namespace fillside::tools
