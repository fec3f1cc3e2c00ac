// A bar that is a round number of centimetres long.
#pragma once

#include "libsim/writers/drawing.h"

namespace fillside {

enum class BarEnd { left, right };

/// The longest bar of 1, 2 or 5 times a power of ten cm that is not longer than `most_px`, its `end` at `at`,
/// its length written above it. Returns the bar's length in pixels.
double draw_scale_bar(Drawing& drawing, const SheetPoint& at, BarEnd end, double px_per_cm, double most_px,
                      double letter_px);

}  // namespace fillside
