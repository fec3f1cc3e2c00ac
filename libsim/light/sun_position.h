// Where the sun stands, by place and time. ERFA, the open form of the IAU's Standards of Fundamental
// Astronomy (sofa 2020-07-21): Earth by eraEpv00, aberration, precession and nutation IAU 2000B, sidereal
// time. Within 0.005 degrees: what is left is the clock (civil time and the Earth's turning differ by up to
// 0.9 s), not the sun.
#pragma once

#include "libsim/base/instant.h"

namespace fillside {

/// A place on the Earth; height above sea level.
struct EarthPlace {
  double latitude_rad = 0.0;   ///< north positive
  double longitude_rad = 0.0;  ///< east positive
  double height_m = 0.0;
};

struct SunPosition {
  double altitude_rad;           ///< of the disc's middle without air; the parallax is in it
  double apparent_altitude_rad;  ///< raised by refraction
  double azimuth_rad;            ///< from true north, clockwise, 0 to 2 pi
  double declination_rad;        ///< of date, seen from the Earth's middle
  double hour_angle_rad;         ///< west positive, -pi to pi
  double equation_of_time_min;   ///< sundial minus mean solar time
  double distance_au;
};

SunPosition sun_position(const EarthPlace& place, const Instant& instant);
/// The same at a Julian date in universal time.
SunPosition sun_position(const EarthPlace& place, double julian_date_ut);

/// How much the air raises what stands at that altitude (without air), at 1010 hPa and 10 degrees C.
/// Saemundsson, "Astronomical Refraction", Sky and Telescope 72, 1986, p. 70, as in Meeus, Astronomical
/// Algorithms, eq. 16.4: within 4" of Bennett's formula of 1982 above the horizon. Other weather changes it
/// by a few per cent. Below -1 degree, where the formula ends, the figure fades out evenly towards straight
/// down.
double refraction_rad(double altitude_rad);

}  // namespace fillside
