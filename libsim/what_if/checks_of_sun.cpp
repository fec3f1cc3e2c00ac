// Where the sun stands, and how sharp its shadows are.
#include <cmath>

#include "libsim/light/sun.h"
#include "libsim/light/sun_position.h"
#include "libsim/view/softness.h"
#include "libsim/what_if/check_families.h"
#include "libsim/what_if/checked_set.h"

namespace fillside {
namespace {

constexpr double kSun_lx = 80000.0, kStep_mm = 0.2;

/// A board's edge at x = 0, one metre before a line of meters that face a level sun of 0.533 degrees.
Estimate edge_in_the_sun_mm(const LightCheckEffort& effort) {
  const SunDisc sun{{0, -1, 0}, 0.2665 * kDegree, kSun_lx, grey(1.0)};
  SceneParts parts =
      set_with_opening({{"sun", sun}}, level_rectangle({-0.5, 0, -0.5}, {0.5, 0, 0.5}, kFaceAway));
  add_checked_wall(parts, mesh_of(level_rectangle({-2, 1, -2}, {0, 1, 2}, kFaceWindow)), Matte{grey(0.0)});
  const Scene scene(std::move(parts));
  EdgeProfile profile{kStep_mm, {}};
  for (int step = -30; step <= 30; ++step) {
    const Point at{0.001 * kStep_mm * step, 2, 0};
    profile.visibility.push_back(flat_reading(scene, at, kFaceWindow, 1024, effort) / kSun_lx);
  }
  return edge_width_mm(profile).value_or(std::nan(""));
}

SunPosition sun_of_nrel() {
  const EarthPlace place{39.742476 * kDegree, -105.1786 * kDegree, 1830.14};
  return sun_position(place, Instant{2003, 10, 17, 12, 30, 30.0, -7 * 60});
}

}  // namespace

std::vector<LightCheck> checks_of_sun(const LightCheckEffort& effort) {
  constexpr const char* kClock = "the Earth's turning is off the clock by up to 0.9 s";
  const SunPosition sun = sun_of_nrel();
  return {{.what = "which way the sun stands",
           .source = "Reda and Andreas, Solar Position Algorithm, NREL/TP-560-34302, 2008, table A5.1",
           .unit = "°",
           .expected = 194.34024,
           .tolerance = 0.005,
           .because = kClock,
           .computed = sun.azimuth_rad / kDegree},
          {.what = "how high the sun stands, without air",
           .source = "Reda and Andreas, same example",
           .unit = "°",
           .expected = 39.872046,
           .tolerance = 0.005,
           .because = kClock,
           .computed = sun.altitude_rad / kDegree},
          {.what = "the sun's shadow edge, 1 m behind a board",
           .source = "circle's segment: 68.7 % of 2 tan(0.533° / 2) lie between a tenth and nine tenths",
           .unit = "mm",
           .expected = 6.391390,
           .tolerance = 0.02,
           .because = "readings stand 0.2 mm apart",
           .computed = edge_in_the_sun_mm(effort),
           .longest_bar = 0.01}};
}

}  // namespace fillside
