// What the colours mean, what the hatch means, and how long a few centimetres are.
#pragma once

#include "libsim/view/colour_scale.h"
#include "libsim/writers/map_layout.h"

namespace fillside {

void draw_legend(Drawing& drawing, const Map& map, ColourScale scale, const MapLayout& layout);

}  // namespace fillside
