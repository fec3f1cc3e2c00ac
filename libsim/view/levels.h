// The round values of a scale: where contours run and what the legend says.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/map.h"

namespace fillside {

struct Level {
  double value = 0.0;
  bool heavy = true;  ///< a whole stop, or a main step of another unit
  std::string text;   ///< "−1⅓", "500"
};

/// Where a value lies between low (0) and high (1) of the map's scale; outside 0..1 for values outside.
double position_on_scale(const Map& map, double value);

/// Levels from low to high inclusive, rising. Stops: every third, whole stops heavy. Logarithmic: 1-2-5
/// numbers heavy, 1.5, 3 and 7 thin. Otherwise: steps of a 1-2-5 number, five to ten of them, all heavy.
std::vector<Level> levels_of(const Map& map);

}  // namespace fillside
