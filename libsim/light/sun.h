// The sun as a light: an even disc half a degree across, far away. (The real one is darker towards its rim,
// which makes the edge of a shadow a little harder than this.)
#pragma once

#include "libsim/base/colour.h"
#include "libsim/base/space.h"

namespace fillside {

/// Half the angle that the disc takes up at one astronomical unit, 959.63" (Auwers 1891, which the
/// Astronomical Almanac keeps); 0.533 degrees across. Over the year it changes by 1.7 % either way.
inline constexpr double kMeanSunHalfAngle_rad = 959.63 / 3600.0 * kDegree;
inline double sun_half_angle_rad(double distance_au) { return kMeanSunHalfAngle_rad / distance_au; }

struct SunDisc {
  Direction to_sun = Direction::UnitZ();
  double half_angle_rad = kMeanSunHalfAngle_rad;
  double normal_illuminance_lx = 0.0;  ///< on a plane that faces it
  Rgb colour = grey(1.0);              ///< of luminance 1
};

/// Radiance of the disc: illuminance / (pi sin^2 half angle), times the colour.
Rgb radiance_of(const SunDisc& sun);
/// Whether that direction meets the disc.
bool is_on_disc(const SunDisc& sun, const Direction& outward);
double solid_angle_sr(const SunDisc& sun);

/// Illuminance of a plane by the whole disc; a plane that the disc straddles counts its middle only.
Rgb illuminance_by(const SunDisc& sun, const Direction& normal);

}  // namespace fillside
