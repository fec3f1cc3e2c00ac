#include "libsim/writers/plain_table.h"

#include <algorithm>

namespace fillside {
namespace {

using Cells = std::vector<std::string>;

std::vector<int> widths_of(const PlainTable& table) {
  std::vector<int> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    int widest = code_points(table.columns[i].heading);
    for (const Cells& row : table.rows)
      if (i < row.size()) widest = std::max(widest, code_points(row[i]));
    widths.push_back(widest);
  }
  return widths;
}

std::string line_of(const PlainTable& table, const std::vector<int>& widths, const Cells& cells) {
  std::string line = table.indent;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    const std::string_view cell = i < cells.size() ? std::string_view(cells[i]) : std::string_view();
    const std::string padding(static_cast<std::size_t>(widths[i] - code_points(cell)), ' ');
    const bool right = table.columns[i].align == PlainTable::Align::right;
    if (i > 0) line += "  ";
    line.append(right ? padding : cell).append(right ? cell : padding);
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + '\n';
}

std::string repeated(std::string_view sign, int count) {
  std::string out;
  for (int i = 0; i < count; ++i) out += sign;
  return out;
}

}  // namespace

int code_points(std::string_view text) {
  return static_cast<int>(std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string to_text(const PlainTable& table) {
  const std::vector<int> widths = widths_of(table);
  Cells headings, rules;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    headings.push_back(table.columns[i].heading);
    rules.push_back(repeated("─", widths[i]));
  }
  const bool headed =
      std::any_of(headings.begin(), headings.end(), [](const auto& text) { return !text.empty(); });
  std::string out;
  if (headed) out += line_of(table, widths, headings) + line_of(table, widths, rules);
  for (const Cells& row : table.rows) out += line_of(table, widths, row);
  return out;
}

}  // namespace fillside
