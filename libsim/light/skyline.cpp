#include "libsim/light/skyline.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/cases.h"
#include "libsim/light/horizon.h"

namespace fillside {
namespace {

double altitude_at(const SkylineProfile& profile, double azimuth_rad) {
  const PolylinePoint& first = profile.points.front();
  const PolylinePoint& last = profile.points.back();
  const bool across_north = azimuth_rad < first.at || azimuth_rad > last.at;
  if (!across_north) return height_of_polyline(profile.points, azimuth_rad);
  const PolylinePoint gap[] = {last, {first.at + 2.0 * kPi, first.height}};
  return height_of_polyline(gap, azimuth_rad < first.at ? azimuth_rad + 2.0 * kPi : azimuth_rad);
}

/// The rim is a straight line: the profile angle is the same everywhere, the altitude sinks towards the ends.
double altitude_at(const ParallelBuilding& building, const Direction& outward) {
  const double across = std::hypot(outward.x(), outward.y()), ahead = outward.dot(building.to_building);
  if (ahead <= 0.0) return 0.0;
  return std::max(0.0, std::atan(building.height_m / building.distance_m * ahead / across));
}

}  // namespace

double rim_altitude_rad(const Skyline& skyline, const Direction& outward) {
  return std::visit(
      Cases{[](const OpenSkyline&) { return 0.0; },
            [](const LevelSkyline& level) { return level.altitude_rad; },
            [&](const ParallelBuilding& building) { return altitude_at(building, outward); },
            [&](const SkylineProfile& profile) { return altitude_at(profile, azimuth_of(outward)); }},
      skyline);
}

bool is_sky(const Skyline& skyline, const Direction& outward) {
  return outward.z() > 0.0 && altitude_of(outward) > rim_altitude_rad(skyline, outward);
}

bool is_skyline(const Skyline& skyline, const Direction& outward) {
  return outward.z() > 0.0 && !is_sky(skyline, outward);
}

Direction front_facing(const Skyline& skyline, const Direction& outward) {
  if (const auto* building = std::get_if<ParallelBuilding>(&skyline)) return -building->to_building;
  const double across = std::hypot(outward.x(), outward.y());
  return across > 0.0 ? Direction(-outward.x() / across, -outward.y() / across, 0.0) : Direction(0, 0, -1);
}

}  // namespace fillside
