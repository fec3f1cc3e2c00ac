// How much light the sun and the sky give, by the sun's altitude and the weather: middling figures for when
// nothing was measured. On one day and at one hour the real figures are easily half or double; a reading
// beats them.
//
// IES Calculation Procedures Committee, "Recommended practice for the calculation of daylight availability",
// J. IES 13(4), 1984, pp. 381-392; its sky parts follow Krochmann and Seidl, "Quantitative data on daylight
// for illuminating engineering", Lighting Research and Technology 6(3), 1974. Constants from memory.
#pragma once

#include <optional>
#include <string_view>

#include "libsim/base/quantity.h"

namespace fillside {

enum class Weather { clear, partly_cloudy, overcast };

/// The weather that goes with a general sky's type (1 to 16): 1 to 5 and 16 overcast, 6 to 10 partly cloudy,
/// 11 to 15 clear.
Weather weather_of_sky(int type);

/// By the sky alone on open level ground. The sun between the horizon and the zenith: nothing when its
/// altitude is not in 0 < altitude <= 90 degrees. Below about 5 degrees no better than a factor of two, and
/// twilight is left out.
///   clear 0.8 + 15.5 sqrt(sin h) klx, partly cloudy 0.3 + 45 sin h klx, overcast 0.3 + 21 sin h klx
std::optional<Illuminance> diffuse_horizontal_illuminance(Weather weather, Angle altitude);

/// On a plane that faces the sun, by the sun alone: 127.5 klx exp(-c m) at the mean distance, c = 0.21 for a
/// clear and 0.80 for a partly cloudy sky, times distance_factor of the day. Nothing for an overcast sky or
/// when the apparent altitude is not in 0 < altitude <= 90 degrees. The exponential law is for one colour
/// only; it makes the sun too weak by a third or so below 5 degrees (from
/// memory).
std::optional<Illuminance> direct_normal_illuminance(Weather weather, Angle apparent_altitude,
                                                     int day_of_year);

/// The same at a given air mass and the mean distance. Not for an overcast sky.
Illuminance direct_normal_at_air_mass(Weather weather, double air_mass);

/// How much more of the sun's light the Earth gets on that day (1 to 366) than at the mean distance: 1 +
/// 0.034 cos(2 pi (J - 2) / 365), within 0.2 % of the inverse square of the distance.
double distance_factor(int day_of_year);

/// Air on the way against the way to the zenith, at an apparent altitude of 0 to 90 degrees. Kasten and
/// Young, "Revised optical air mass tables and approximation formula", Applied Optics 28(22), 1989, eq. 3.
double relative_air_mass(Angle apparent_altitude);

/// Zenith of the traditional overcast sky, 0.123 + 8.6 sin h kcd/m2: Krochmann and Seidl 1974. 0 <= h <= 90
/// degrees.
Luminance overcast_zenith_luminance(Angle altitude);
/// Zenith of a clear sky, (1.376 T - 1.81) tan h + 0.38 kcd/m2, T Linke's turbidity (2.75 clean, 5 hazy):
/// Dogniaux and Krochmann (from memory). 0 <= h <= 60 degrees; the tangent makes it useless above.
Luminance clear_zenith_luminance(Angle altitude, double turbidity);

}  // namespace fillside
