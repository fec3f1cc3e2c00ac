// Contour lines on a map: whole stops (or main levels) heavy, the rest thin, each broken to let its number
// in.
#pragma once

#include "libsim/view/colour_scale.h"
#include "libsim/writers/map_layout.h"

namespace fillside {

/// Numbers keep clear of what is taken and take their own places.
void draw_contours(Drawing& drawing, const Map& map, ColourScale scale, const MapLayout& layout,
                   TakenPlaces& taken);

}  // namespace fillside
