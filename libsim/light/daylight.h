// Daylight as one: sky, sun, and the ground that they light, for a moment at a place.
#pragma once

#include <optional>

#include "libsim/base/colour.h"
#include "libsim/light/general_sky.h"
#include "libsim/light/horizon.h"
#include "libsim/light/sun.h"
#include "libsim/light/sun_position.h"

namespace fillside {

struct Daylight {
  GeneralSky sky;
  Rgb zenith_radiance = grey(0.0);
  std::optional<SunDisc> sun;
  Rgb ground_radiance = grey(0.0);  ///< even to the horizon
};

/// Illuminance of open level ground by sky and sun, and of an open upright front that faces `facing`
/// (horizontal) by sky, sun and half of what an even ground sends up.
Rgb level_illuminance(const Daylight& light);
Rgb front_illuminance(const Daylight& light, const Direction& facing);
/// The latter without the sun.
Rgb front_illuminance_without_sun(const Daylight& light, const Direction& facing);

/// What somebody measured or chose in place of the usual figures.
struct DaylightFigures {
  std::optional<Illuminance> diffuse_horizontal;               ///< by the sky alone
  std::optional<Illuminance> direct_normal;                    ///< by the sun alone; 0 hides it
  std::optional<double> sky_temperature_K, sun_temperature_K;  ///< 1000 to 25000 K
  Rgb ground_reflectance = grey(0.2);
};

/// Daylight under a general sky of that type (1 to 16) with the sun where it stands on that day of the year
/// (1 to 366). Figures left out are the usual ones: availability.h for the weather of the type,
/// daylight_colour.h. Overcast skies and type 9, whose sun is hidden, have no sun unless its illuminance is
/// given. Nothing when the sun's middle is not above the horizon, refraction included: twilight has no
/// figures here.
std::optional<Daylight> daylight_by(const SunPosition& sun, int day_of_year, int sky_type,
                                    Compass compass = {}, const DaylightFigures& figures = {});

}  // namespace fillside
