// The measures of a tumbler, for what is put into one.
#pragma once

namespace fillside {

struct TumblerMeasures {
  double r, h, wall,
      bottom;  ///< radius of the rim, height, thickness of the wall, height of the inside's foot
  double gap;  ///< between glass and contents: 0.2 mm for 7 cm

  double inner_radius_at(double height_m) const;
  double level_m(double level) const;  ///< height of the surface when that full, 0 to 1
};
TumblerMeasures tumbler_measures(double width_m);

}  // namespace fillside
