// One map less another: what a change of the set did, place by place.
#pragma once

#include <string>

#include "libsim/view/map_figures.h"

namespace fillside {

/// Which figures a difference is formed of: all but gain (whose board may be in one set only) and softness
/// (whose edges run elsewhere).
bool can_be_subtracted(MapFigure figure);

/// The change of the figure in one cell, from the reference to the other, replicate by replicate: stops for
/// what is light or stops, else the difference in the figure's unit. Swapping the two turns the sign.
Estimate change_in(const MapSubject& reference, const MapSubject& other, MapFigure figure, std::size_t cell);

struct ComparedNames {
  std::string reference, other;
};

/// Both measured on the same plane with the same seed. A cell that is covered in either set is covered here.
/// The scale is centred on zero: draw it with ColourScale::diverging.
FiguredMap difference_map(const MapSubject& reference, const MapSubject& other, MapFigure figure,
                          const ComparedNames& names);

}  // namespace fillside
