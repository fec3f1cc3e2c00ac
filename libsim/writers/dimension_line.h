// A measure as draughtsmen write it: a thin line with a slanted stroke at each end and its length beside it.
#pragma once

#include <string>

#include "libsim/writers/drawing.h"

namespace fillside {

/// The text stands along the line, read from below or from the right, where it lies on nothing that is taken;
/// it takes its own place.
void draw_dimension(Drawing& drawing, const SheetPoint& from, const SheetPoint& to, const std::string& text,
                    double letter_px, TakenPlaces& taken, TakenPlaces& texts);

}  // namespace fillside
