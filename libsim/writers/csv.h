// Comma-separated values for spreadsheets.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace fillside {

struct CsvColumn {
  std::string name;
  std::string unit;  ///< written into the header cell: "distance (cm)"; may be empty
};

using CsvCell = std::variant<std::string, double>;  ///< a number that is not finite becomes an empty cell

/// RFC 4180: lines end with CR LF, cells with commas, quotes or line ends are quoted. Numbers always have a
/// decimal point and the fewest digits that read back to the same value, whatever the locale. Throws
/// WriteError when a row has not one cell per column.
std::string csv_text(const std::vector<CsvColumn>& columns, const std::vector<std::vector<CsvCell>>& rows);

}  // namespace fillside
