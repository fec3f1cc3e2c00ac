// Maps made from a formula, for tests.
#pragma once

#include "libsim/view/map.h"

namespace fillside {

/// A map over [-20, 20] x [-10, 10] cm whose cells hold formula(x_cm, y_cm) at their centres.
template <class Formula>
Map map_of(int columns, int rows, Formula formula) {
  Map map;
  map.columns = columns, map.rows = rows;
  map.left_cm = -20.0, map.right_cm = 20.0, map.near_cm = -10.0, map.far_cm = 10.0;
  for (int j = 0; j < rows; ++j)
    for (int i = 0; i < columns; ++i)
      map.values.push_back(
          static_cast<float>(formula(-20.0 + 40.0 * (i + 0.5) / columns, 10.0 - 20.0 * (j + 0.5) / rows)));
  return map;
}

}  // namespace fillside
