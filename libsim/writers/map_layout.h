// Where the parts of a map sheet stand: the map in the middle, a gutter around it for things beyond its edge,
// ticks and axis names outside that, the legend to the right, texts above and below.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "libsim/view/map.h"
#include "libsim/writers/drawing.h"
#include "libsim/writers/sheet_space.h"

namespace fillside {

enum class Side { left, right, far, near };

/// How many strips of the gutter each side needs, in the order of Side.
using Lanes = std::array<int, 4>;
inline constexpr double kLanePx = 24.0;

struct MapLayout {
  int width = 0, height = 0;
  Box plot;                                        ///< the map itself
  Box gutter;                                      ///< the plot and the lanes around it
  Box legend;                                      ///< column to the right
  std::vector<std::string> title, note, captions;  ///< broken into lines
  double title_top = 0.0, captions_top = 0.0;
  double px_per_cm = 1.0;
  double left_cm = 0.0, far_cm = 0.0;

  SheetPoint spot_of(double x_cm, double y_cm) const {
    return {plot.left + (x_cm - left_cm) * px_per_cm, plot.top + (far_cm - y_cm) * px_per_cm};
  }
  std::vector<SheetPoint> path_of(const std::vector<std::array<double, 2>>& path_cm) const;
};

Lettering title_lettering();
Lettering note_lettering();
Lettering caption_lettering();

/// `ruler` is any drawing: it only measures texts.
MapLayout layout_of(const Map& map, const std::vector<std::string>& captions, int width_px,
                    const Lanes& lanes, const Drawing& ruler);

/// Ink that reads on a field colour of that OKLab lightness.
inline Ink ink_over(double lightness) { return lightness > 0.6 ? kDarkInk : kPaper; }

}  // namespace fillside
