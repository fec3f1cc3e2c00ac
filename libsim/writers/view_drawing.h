// One view of a set, to scale, with its measures and the names of what stands there.
#pragma once

#include "libsim/view/set_view.h"
#include "libsim/writers/drawing.h"

namespace fillside {

/// What the view takes on the sheet.
Box box_of(const SetView& view, const SheetPoint& left_top, double px_per_cm);

/// Seen from above with the hours of the clock along its frame.
void draw_view(Drawing& drawing, const SetView& view, const Box& frame, double px_per_cm, double letter_px);

/// How things of each kind are drawn, for a legend: a small sample in the box.
void draw_sample(Drawing& drawing, SeenThing::Kind kind, const Box& in);

}  // namespace fillside
