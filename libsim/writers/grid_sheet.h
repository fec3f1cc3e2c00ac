// One figure over two things that were varied: a field of coloured cells with the figure written in each.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "libsim/view/picture.h"

namespace fillside {

/// More cells than these are coloured only: their figures would not be read.
inline constexpr std::size_t kMostWrittenCells = 200;

struct GridSheet {
  std::string title, note;
  std::string across_title, along_title;
  std::vector<std::string> across, along;  ///< labels of the columns, and of the rows from the top
  std::string unit;
  std::vector<double> values;          ///< row by row; not finite: an empty cell
  std::vector<double> half_widths_95;  ///< the same
  std::vector<std::string> captions;
};

/// Throws WriteError when there are no cells or not one value each.
Picture grid_sheet(const GridSheet& sheet);

}  // namespace fillside
