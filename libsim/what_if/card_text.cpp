#include <fmt/format.h>

#include <algorithm>

#include "libsim/what_if/set_card.h"

namespace fillside {
namespace {

constexpr std::size_t kWidth = 100, kLabel = 10;

/// The text broken at spaces; later lines start with `indent`.
std::string wrapped(std::string_view text, std::size_t first_column, const std::string& indent) {
  std::string out;
  std::size_t column = first_column;
  while (!text.empty()) {
    const std::string_view word = text.substr(0, text.find(' '));
    const bool first = out.empty();
    if (!first && column + 1 + word.size() > kWidth) {
      out += "\n" + indent;
      column = indent.size();
    } else if (!first) {
      out += ' ';
      ++column;
    }
    out += word;
    column += word.size();
    text.remove_prefix(std::min(text.size(), word.size() + 1));
  }
  return out;
}

std::string paragraph(std::string_view text, const std::string& indent) {
  return indent + wrapped(text, indent.size(), indent) + "\n";
}

/// A remark follows on the same line where there is room, else on a line of its own: words are never broken,
/// because they are read back.
std::string line_of(const CardLine& line) {
  const std::string indent(4 + kLabel + 2, ' ');
  std::string text = fmt::format("    {:<{}}  {}", line.label, kLabel, line.words);
  if (line.remark.empty()) return text + "\n";
  const std::string remark = "(" + line.remark + ")";
  if (text.size() + 1 + remark.size() <= kWidth) return text + " " + remark + "\n";
  return text + "\n" + paragraph(remark, indent);
}

/// Code points: how wide a text is in a terminal.
std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string table_text(const std::vector<std::vector<std::string>>& table) {
  std::vector<std::size_t> widths;
  for (const auto& row : table) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t c = 0; c < row.size(); ++c) widths[c] = std::max(widths[c], width_of(row[c]));
  }
  std::string text = "\n";
  for (const auto& row : table) {
    std::string line = "    ";
    for (std::size_t c = 0; c < row.size(); ++c)
      line += row[c] + std::string(widths[c] - width_of(row[c]) + 2, ' ');
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }
  return text + "\n";
}

}  // namespace

std::string card_text(const SetCard& card) {
  std::string text = fmt::format("Set card: {}\n\n", card.title);
  for (const std::string& line : card.preface) text += paragraph(line, "");
  int number = 0;
  for (const CardStep& step : card.steps) {
    text += fmt::format("\n{}. {}\n", ++number, step.title);
    for (const std::string& note : step.notes) text += paragraph(note, "  ");
    for (const CardThing& thing : step.things) {
      text += fmt::format("\n  {}\n", card_heading(thing));
      for (const CardLine& line : thing.lines) text += line_of(line);
    }
    if (!step.table.empty()) text += table_text(step.table);
    for (const std::string& note : step.last_notes) text += paragraph(note, "  ");
  }
  return text;
}

}  // namespace fillside
