// A map as a page to pin on the wall: field, contours, the set drawn in, axes, legend, scale bar, captions.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/colour_scale.h"
#include "libsim/view/map.h"
#include "libsim/view/picture.h"

namespace fillside {

struct MapSheet {
  ColourScale scale = ColourScale::sequential;
  bool smooth = true;    ///< false: each cell of the map as one flat patch
  bool contours = true;  ///< whole stops heavy, thirds thin
  int contour_passes =
      2;                ///< averaging (view/averaged.h) before lines are drawn; stated at the foot unless 0
  int width_px = 1400;  ///< at least 900
  std::vector<std::string> captions = {};  ///< lines at the foot: scene, error bar, seed
};

/// Draws the map with its colour scale from map.low to map.high. The height follows from the map's
/// proportions. Throws WriteError when the map has no cells, no extent, or its values do not fit its size.
Picture map_sheet(const Map& map, const MapSheet& sheet = {});

}  // namespace fillside
