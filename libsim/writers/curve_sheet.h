// Figures against what was varied, with their error bars: one panel a figure, one above the other.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/picture.h"

namespace fillside {

struct CurvePoint {
  double x = 0.0;     ///< any scale; all panels share it
  std::string label;  ///< under the axis: "15 cm", "A3"
  double y = 0.0;     ///< a gap is drawn for what is not finite
  double half_width_95 = 0.0;
  bool told_apart = true;  ///< from the point before: a solid line, else a dashed one
};

struct CurvePanel {
  std::string title;  ///< "lit:shadow of the subject"
  std::string unit;   ///< "stops", "lx", "EV", "ratio"
  std::vector<CurvePoint> points;
};

struct CurveSheet {
  std::string title, note, x_title;
  std::vector<CurvePanel> panels;     ///< one to four
  std::vector<std::string> captions;  ///< small, at the foot
};

/// Throws WriteError for another number of panels or a panel without points.
Picture curve_sheet(const CurveSheet& sheet);

}  // namespace fillside
