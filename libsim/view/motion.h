// What moves while the shutter is open is drawn out over the picture.
#pragma once

#include "libsim/base/quantity.h"

namespace fillside {

/// How far a thing gets meanwhile; speeds in m/s, across the view.
Length motion_blur(double speed_m_per_s, Duration shutter);
/// The longest shutter that blurs no more than that.
Duration shutter_for_blur(double speed_m_per_s, Length blur);
/// A length on the focused plane in pixels of a picture that shows `frame_width` over `columns` pixels.
double in_pixels(Length on_subject, Length frame_width, int columns);

/// Speed after a fall, sqrt(2 g h): sugar, a drop, a stream of milk. Galileo, "Two New Sciences" (1638),
/// third day; g = 9.80665 m/s2 (3rd CGPM, 1901).
double falling_speed_m_per_s(Length drop);

/// Slowest shutter that most hands hold still: 1 s / (focal length in mm, as on a 36 x 24 mm sensor), and
/// never slower than 1/60 s. Common practice; a stabilised lens holds 2 to 4 stops more.
Duration slowest_by_hand(Length focal_length, double crop_factor);

}  // namespace fillside
