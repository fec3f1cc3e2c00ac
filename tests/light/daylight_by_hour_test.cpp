#include "libsim/light/daylight_by_hour.h"

#include <gtest/gtest.h>

#include "libsim/light/patched_outside.h"

namespace fillside {
namespace {

SunPosition sun_at(double altitude_deg, double azimuth_deg) {
  SunPosition sun{};
  sun.altitude_rad = sun.apparent_altitude_rad = altitude_deg * kDegree;
  sun.azimuth_rad = azimuth_deg * kDegree;
  sun.distance_au = 1.0;
  return sun;
}

double relative_difference(const Rgb& a, const Rgb& b) { return ((a - b) / b).abs().maxCoeff(); }

TEST(DaylightByHour, is_daylight_by_within_a_thousandth) {
  for (const int type : {kTraditionalOvercast, kClearSky}) {
    const DaylightByHour quick(type, grey(0.2));
    for (const double altitude_deg : {0.3, 2.5, 17.4, 44.5, 61.7, 89.5}) {
      const SunPosition sun = sun_at(altitude_deg, 130.0);
      const auto a = quick.at(sun, 100, Compass{0.3}), b = daylight_by(sun, 100, type, Compass{0.3});
      ASSERT_TRUE(a && b);
      EXPECT_LT(relative_difference(a->zenith_radiance, b->zenith_radiance), 1e-3)
          << type << ' ' << altitude_deg;
      EXPECT_LT(relative_difference(a->ground_radiance, b->ground_radiance), 1e-3);
      EXPECT_EQ(a->sun.has_value(), b->sun.has_value());
      if (!a->sun) continue;
      EXPECT_DOUBLE_EQ(a->sun->normal_illuminance_lx, b->sun->normal_illuminance_lx);
    }
  }
}

TEST(DaylightByHour, there_is_none_while_the_sun_is_down) {
  EXPECT_FALSE(DaylightByHour(kClearSky, grey(0.2)).at(sun_at(-0.1, 0.0), 1, {}));
}

/// Level illuminance by the patches of the sky.
double level_lx(const Eigen::VectorXf& radiances) {
  double lx = 0.0;
  for (std::size_t bin = 0; bin < sky_patches::kSky; ++bin) {
    const auto at = static_cast<Eigen::Index>(3 * bin);
    const Rgb radiance = radiances.segment<3>(at).cast<double>().array();
    lx += luminance(radiance) * sky_patches::centre(bin).z() * sky_patches::solid_angle_sr(bin);
  }
  return lx;
}

// The bound on what patches cost: less than one per cent of the sky's light on open ground.
TEST(PatchedOutside, an_open_sky_gives_level_ground_what_it_should) {
  for (const int type : {kTraditionalOvercast, kClearSky})
    for (const double altitude_deg : {5.0, 20.0, 43.0, 70.0}) {
      DaylightFigures hidden_sun;
      hidden_sun.direct_normal = lux(0.0);
      const auto light = daylight_by(sun_at(altitude_deg, 130.0), 100, type, {}, hidden_sun);
      ASSERT_TRUE(light);
      const double expected = luminance(level_illuminance(*light));
      EXPECT_NEAR(level_lx(PatchedOutside(OpenSkyline{}, grey(0.3)).radiances(*light)), expected,
                  0.01 * expected)
          << type << ' ' << altitude_deg;
    }
}

TEST(PatchedOutside, a_skyline_as_bright_as_an_even_sky_changes_nothing_but_the_ground_stays) {
  // Even sky of type 5 over ground as bright as itself: an upright front gets pi L, a white one sends L back.
  Daylight light;
  light.sky = {kUniformSky, Direction::UnitZ()};
  light.zenith_radiance = light.ground_radiance = grey(1000.0);
  const Eigen::VectorXf open = PatchedOutside(OpenSkyline{}, grey(1.0)).radiances(light);
  const Eigen::VectorXf valley = PatchedOutside(LevelSkyline{0.5}, grey(1.0)).radiances(light);
  for (Eigen::Index i = 0; i < open.size(); ++i) EXPECT_NEAR(valley[i], open[i], 5.0) << i;
}

TEST(PatchedOutside, the_sun_behind_a_skyline_is_not_free) {
  const PatchedOutside valley(LevelSkyline{0.5}, grey(0.3));
  EXPECT_FALSE(valley.sun_is_free(toward(0.49, 2.0)));
  EXPECT_TRUE(valley.sun_is_free(toward(0.51, 2.0)));
  EXPECT_FALSE(PatchedOutside(OpenSkyline{}, grey(0.3)).sun_is_free(toward(-0.01, 2.0)));
}

}  // namespace
}  // namespace fillside
