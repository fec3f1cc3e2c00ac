#include "libsim/writers/csv.h"

#include <fmt/format.h>

#include <cmath>

#include "libsim/base/problem.h"

namespace fillside {
namespace {

std::string as_field(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string cell_text(const CsvCell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return as_field(*text);
  const double number = std::get<double>(cell);
  return std::isfinite(number) ? fmt::format("{}", number) : "";
}

std::string header_text(const CsvColumn& column) {
  return as_field(column.unit.empty() ? column.name : fmt::format("{} ({})", column.name, column.unit));
}

template <class Cells, class Text>
void add_line(std::string& out, const Cells& cells, Text text) {
  bool first = true;
  for (const auto& cell : cells) {
    if (!first) out += ',';
    out += text(cell);
    first = false;
  }
  out += "\r\n";
}

}  // namespace

std::string csv_text(const std::vector<CsvColumn>& columns, const std::vector<std::vector<CsvCell>>& rows) {
  std::string out;
  add_line(out, columns, header_text);
  for (const auto& row : rows) {
    if (row.size() != columns.size())
      throw WriteError(
          fmt::format("cannot write a CSV: a row of {} cells under {} columns", row.size(), columns.size()));
    add_line(out, row, cell_text);
  }
  return out;
}

}  // namespace fillside
