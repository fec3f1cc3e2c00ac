// The usual colour of each kind of sky and of the sun by its altitude: starting points, to be replaced by
// what a colour meter or a grey card says.
#pragma once

#include "libsim/base/colour.h"
#include "libsim/base/quantity.h"

namespace fillside {

/// Correlated temperature of the whole sky of that type (1 to 16), without the sun. Overcast 6500 K: near
/// D65, which CIE 15:2004 calls average daylight. Clear 12000 K: between the 10000 K near the horizon and the
/// 20000 K and more away from the sun (from memory). The ones in between are put in between (from memory).
double usual_sky_temperature_K(int type);

/// Correlated temperature of the sun's own light by its altitude: 3000 K at 5 degrees, 4000 at 15, 4700 at
/// 30, 5200 at 50, 5500 from 70 on, straight lines in between and 3000 K below 5 (from memory). Haze makes it
/// warmer.
double usual_sun_temperature_K(Angle altitude);

/// The same as colours of luminance 1.
Rgb usual_sky_colour(int type);
Rgb usual_sun_colour(Angle altitude);

}  // namespace fillside
