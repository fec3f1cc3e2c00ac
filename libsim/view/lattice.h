// The grid of a map's values with one more ring on the rectangle's edge, so that pictures and contours reach
// it.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/view/map.h"

namespace fillside {

/// Node (i, j): (1, 1) is the far left cell's centre; column 0 and row 0 and the last ones lie on the edge. A
/// value on the edge goes on as the two nearest cells do (half a cell further), or repeats the nearest one
/// where the next is covered. Keeps a reference to the map.
class Lattice {
 public:
  explicit Lattice(const Map& map) : map_(map) {}
  int columns() const { return map_.columns + 2; }
  int rows() const { return map_.rows + 2; }

  std::array<double, 2> place_cm(int i, int j) const {
    const double across = std::clamp((i - 0.5) / map_.columns, 0.0, 1.0);
    const double down = std::clamp((j - 0.5) / map_.rows, 0.0, 1.0);
    return {std::lerp(map_.left_cm, map_.right_cm, across), std::lerp(map_.far_cm, map_.near_cm, down)};
  }

  double value(int i, int j) const {
    const int column = std::clamp(i, 1, map_.columns), row = std::clamp(j, 1, map_.rows);
    return cell(column, row) + onward(column, row, column - i, 0) + onward(column, row, 0, row - j);
  }

 private:
  double cell(int i, int j) const {
    return map_.values[static_cast<std::size_t>(j - 1) * static_cast<std::size_t>(map_.columns) + i - 1];
  }
  // Half the step from the next cell inwards to this one.
  double onward(int column, int row, int inward_i, int inward_j) const {
    const int i = column + inward_i, j = row + inward_j;
    if ((inward_i == 0 && inward_j == 0) || i < 1 || j < 1 || i > map_.columns || j > map_.rows) return 0.0;
    const double step = cell(column, row) - cell(i, j);
    return std::isfinite(step) ? step / 2.0 : 0.0;
  }

  const Map& map_;
};

}  // namespace fillside
