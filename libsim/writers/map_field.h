// The map's values as a picture in the colours of its scale.
#pragma once

#include "libsim/view/colour_scale.h"
#include "libsim/view/map.h"
#include "libsim/view/picture.h"

namespace fillside {

/// `smooth`: values (not colours) are bilinear between cell centres; else each cell is one flat patch.
/// Covered cells are hatched.
Picture field_picture(const Map& map, ColourScale scale, bool smooth, int width, int height);

/// How strongly the hatch covers a pixel, 0..1; for the legend's sample of it.
double hatch_at(int x, int y);

}  // namespace fillside
