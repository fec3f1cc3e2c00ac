// The colours of maps, made for this project: closed-form curves in OKLab, no table of colours.
//
// Sequential: a helix. Lightness rises evenly while the hue turns evenly on a circle that does not have grey
// in its middle: blue-violet, plum, terracotta, apricot, cream. Even rise and even turn make every step
// equally long, and the rising lightness alone keeps the order in greyscale and for colour-blind readers. (A
// helix about the grey axis of RGB is Green, "A colour scheme for the display of astronomical intensity
// images", Bulletin of the Astronomical Society of India 39, 2011, section 2.)
//
// Diverging: two straight arms from a light warm grey, to blue-violet for less and to terracotta for more.
// Both arms darken alike, so in greyscale it shows how much, not which way: label the contours.
#pragma once

#include "libsim/view/oklab.h"

namespace fillside {

enum class ColourScale { sequential, diverging };

/// The scale's colour at a position from 0 to 1 (clamped; 0.5 is the middle of the diverging one).
Oklab point_on_scale(ColourScale scale, double position);

/// The same as a linear triple, each channel in 0..1.
Rgb colour_on_scale(ColourScale scale, double position);

}  // namespace fillside
