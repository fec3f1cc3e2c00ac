// What stands before the sky: a level rim, a long building opposite, or a profile taken with a compass and a
// clinometer. All of it counts as far away: it has directions, not places, so that two windows of a room see
// the same. To add a kind: a struct, a case in rim_altitude of skyline.cpp.
#pragma once

#include <variant>
#include <vector>

#include "libsim/base/polyline.h"
#include "libsim/base/space.h"

namespace fillside {

struct OpenSkyline {};

/// The same altitude all round: a valley, a courtyard.
struct LevelSkyline {
  double altitude_rad = 0.0;
};

/// A long building or wall, parallel to the window.
struct ParallelBuilding {
  double distance_m = 10.0;
  double height_m = 0.0;              ///< above the middle of the window
  Direction to_building = {0, 1, 0};  ///< horizontal, square to the front
};

/// Altitude over azimuth, straight lines between the points and round from the last to the first.
struct SkylineProfile {
  /// `at`: azimuth clockwise from the y axis, 0 <= at < 2 pi, increasing; `height`: altitude. Radians, one or
  /// more.
  std::vector<PolylinePoint> points;
};

using Skyline = std::variant<OpenSkyline, LevelSkyline, ParallelBuilding, SkylineProfile>;

/// Altitude of the skyline's rim over the horizontal bearing of `outward`; 0 where there is nothing.
double rim_altitude_rad(const Skyline& skyline, const Direction& outward);

/// Above the horizon and above the rim. What is above the horizon and not sky is skyline.
bool is_sky(const Skyline& skyline, const Direction& outward);
bool is_skyline(const Skyline& skyline, const Direction& outward);

/// The way the front seen in that direction faces: square to the building, else straight back.
Direction front_facing(const Skyline& skyline, const Direction& outward);

}  // namespace fillside
