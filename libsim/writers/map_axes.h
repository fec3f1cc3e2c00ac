// The frame of a map with ticks in cm on all sides, numbers and names at the left and below.
#pragma once

#include "libsim/writers/map_layout.h"

namespace fillside {

void draw_axes(Drawing& drawing, const Map& map, const MapLayout& layout);

}  // namespace fillside
