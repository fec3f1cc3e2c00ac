// A table for the terminal: columns aligned by what is seen, not by bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fillside {

struct PlainTable {
  enum class Align { left, right };
  struct Column {
    std::string heading;
    Align align = Align::left;
  };
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;  ///< UTF-8; a short row is filled up with empty cells
  std::string indent;                          ///< before every line
};

/// How many code points a UTF-8 text has: its width in a terminal, for the alphabets this program prints.
int code_points(std::string_view text);

/// Headings, a rule, the rows; two spaces between columns, no spaces at the ends of lines. Without any
/// heading there is no rule either.
std::string to_text(const PlainTable& table);

}  // namespace fillside
