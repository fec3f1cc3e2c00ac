// The sun alone outside, over sets whose window lies in y = 0 and looks out toward -y.
#pragma once

#include <cmath>

#include "tests/closed_form/sets.h"

namespace fillside::tests {

/// Altitude over the horizon, and bearing from straight out of the window towards -x: to the right as one
/// looks out.
inline SunDisc sun_at(double altitude_deg, double off_window_deg, double normal_lx) {
  const double altitude = altitude_deg * kDegree, off = off_window_deg * kDegree;
  return {{-std::sin(off) * std::cos(altitude), -std::cos(off) * std::cos(altitude), std::sin(altitude)},
          kMeanSunHalfAngle_rad,
          normal_lx,
          grey(1.0)};
}

inline Outside only(const SunDisc& sun) { return {{"sun", sun}}; }

/// A sky of that type and that illuminance on open level ground, its sun's disc hidden, over ground of that
/// reflectance.
inline Outside sky_without_sun(int type, const Direction& to_sun, double level_lx, double ground_reflectance,
                               const Skyline& skyline = OpenSkyline{}, double skyline_reflectance = 0.0) {
  const GeneralSky sky{type, to_sun};
  return daylit({sky, grey(zenith_luminance(sky, lux(level_lx)).si), std::nullopt,
                 grey(ground_reflectance * level_lx / kPi)},
                skyline, grey(skyline_reflectance));
}

/// Black surroundings and one opening, bare unless it is dressed.
inline SceneParts lit_by(const Outside& outside, const Rectangle& window,
                         const ClearPane& glass = {.index = 1.52, .absorption = 0.0, .panes = 0}) {
  SceneParts parts;
  parts.outside = outside;
  Opening opening;
  opening.rectangle = window;
  opening.glass = glass;
  parts.add_emitter("window", opening);
  return parts;
}

}  // namespace fillside::tests
