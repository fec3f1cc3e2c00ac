// What the colours mean, what the hatch means, and how long a few centimetres are.
#pragma once

#include "libsim/view/colour_scale.h"
#include "libsim/writers/map_layout.h"

namespace fillside {

void draw_legend(Drawing& drawing, const Map& map, ColourScale scale, const MapLayout& layout);

/// A bar of a round length, at most `most_px` long, with its length in cm written above; its left end at
/// `at`.
void draw_scale_bar(Drawing& drawing, const Spot& at, double px_per_cm, double most_px, const Ink& ink);

}  // namespace fillside
