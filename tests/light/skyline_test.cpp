#include "libsim/light/skyline.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/light/general_sky.h"
#include "libsim/light/horizon.h"
#include "libsim/light/lit_skyline.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

const Direction kWindowOutward(0, 1, 0);

/// Share of the illuminance of open level ground that the window gets past the skyline, %.
double sky_component(const Skyline& skyline, int type) {
  const double lit_sr = tests::over_sphere(0.0, [&](const Direction& d) {
    return is_sky(skyline, d) ? relative_luminance({type}, d) * std::max(0.0, d.dot(kWindowOutward)) : 0.0;
  });
  return 100.0 * lit_sr / horizontal_illuminance_per_zenith_luminance(GeneralSky{type});
}

ParallelBuilding at_profile_angle(double angle_deg) {
  return {10.0, 10.0 * std::tan(angle_deg * kDegree), kWindowOutward};
}

// Moon and Spencer's sky (1942) integrated above the profile angle t: (3 / 7 pi) ((pi / 2) (1 - sin t) + (4 /
// 3) cos^2 t). Littlefair, Site Layout Planning for Daylight and Sunlight (BRE BR 209), from memory: 25
// degrees leave 27 %. A uniform sky: (1 - sin t) / 2.
TEST(VerticalSkyComponent, behind_a_long_building_is_the_closed_form) {
  const double table[][2] = {{10, 35.348206}, {20, 30.160980}, {25, 27.312910},
                             {30, 24.356138}, {45, 15.370851}, {60, 7.418168}};
  for (const auto& [angle_deg, percent] : table)
    EXPECT_NEAR(sky_component(at_profile_angle(angle_deg), kTraditionalOvercast), percent, 0.02) << angle_deg;
  EXPECT_NEAR(sky_component(at_profile_angle(25.0), kUniformSky), 28.869087, 0.02);
}

// The same sky above a level rim g: (2 / 3) ((pi / 2 - g) / 2 - sin 2g / 4 + (2 / 3) cos^3 g) / (7 pi / 9).
// Not the figure of a long building: that sinks towards its ends.
TEST(VerticalSkyComponent, behind_a_level_rim_is_the_closed_form) {
  EXPECT_NEAR(sky_component(LevelSkyline{25 * kDegree}, kTraditionalOvercast), 23.791698, 0.02);
  EXPECT_NEAR(sky_component(LevelSkyline{45 * kDegree}, kTraditionalOvercast), 10.324190, 0.02);
}

TEST(VerticalSkyComponent, in_the_open_is_that_of_an_unobstructed_wall) {
  EXPECT_NEAR(sky_component(OpenSkyline{}, kTraditionalOvercast), 39.617708, 0.002);
  EXPECT_NEAR(sky_component(OpenSkyline{}, kUniformSky), 50.0, 0.002);
  EXPECT_NEAR(sky_component(LevelSkyline{0.0}, kUniformSky), 50.0, 0.002);
}

TEST(Skyline, building_hides_nothing_behind_the_window) {
  const Skyline building = at_profile_angle(60.0);
  EXPECT_TRUE(is_skyline(building, toward(59 * kDegree, 0.0)));
  EXPECT_TRUE(is_sky(building, toward(61 * kDegree, 0.0)));
  EXPECT_TRUE(is_sky(building, toward(50 * kDegree, 80 * kDegree)));  // low towards its far end
  EXPECT_TRUE(is_sky(building, toward(1 * kDegree, 180 * kDegree)));
}

TEST(Skyline, below_the_horizon_is_neither_sky_nor_skyline) {
  for (const Skyline& skyline :
       {Skyline{OpenSkyline{}}, Skyline{LevelSkyline{0.3}}, Skyline{at_profile_angle(20.0)}})
    for (const double altitude : {0.0, -0.1, -1.5}) {
      EXPECT_FALSE(is_sky(skyline, toward(altitude, 0.1)));
      EXPECT_FALSE(is_skyline(skyline, toward(altitude, 0.1)));
    }
}

TEST(Skyline, profile_goes_straight_between_its_points_and_round_past_north) {
  const Skyline profile = SkylineProfile{
      {{90 * kDegree, 10 * kDegree}, {180 * kDegree, 30 * kDegree}, {270 * kDegree, 20 * kDegree}}};
  const double table[][2] = {{90, 10},  {135, 20}, {180, 30},   {225, 25},
                             {270, 20}, {0, 15},   {315, 17.5}, {45, 12.5}};
  for (const auto& [azimuth_deg, altitude_deg] : table)
    EXPECT_NEAR(rim_altitude_rad(profile, toward(0.2, azimuth_deg * kDegree)) / kDegree, altitude_deg, 1e-9)
        << azimuth_deg;
}

TEST(Skyline, profile_of_equal_points_is_a_level_rim) {
  const Skyline profile = SkylineProfile{{{0.5, 0.4}, {2.0, 0.4}, {5.0, 0.4}}};
  const Skyline single = SkylineProfile{{{3.0, 0.4}}};
  for (double azimuth = 0.0; azimuth < 6.28; azimuth += 0.1) {
    EXPECT_NEAR(rim_altitude_rad(profile, toward(0.1, azimuth)), 0.4, 1e-12);
    EXPECT_NEAR(rim_altitude_rad(single, toward(0.1, azimuth)), 0.4, 1e-12);
  }
}

// Lambert: a matte front shows its illuminance x reflectance / pi. Under an even sky of radiance 1 and over
// ground of radiance g an upright front gets pi / 2 (1 + g).
TEST(LitSkyline, under_an_even_sky_shows_half_of_it_times_its_reflectance) {
  const LitSkyline lit(LevelSkyline{0.5}, Rgb(0.2, 0.4, 0.6), {{kUniformSky}, grey(1000.0), {}, grey(200.0)});
  const Rgb radiance = lit.radiance(toward(0.2, 1.0));
  EXPECT_NEAR(radiance[0], 0.2 * 600.0, 1e-6);
  EXPECT_NEAR(radiance[1], 0.4 * 600.0, 1e-6);
  EXPECT_NEAR(radiance[2], 0.6 * 600.0, 1e-6);
  EXPECT_EQ(lit.radiance(toward(0.6, 1.0)).maxCoeff(), 0.0);
  EXPECT_EQ(lit.radiance(toward(-0.2, 1.0)).maxCoeff(), 0.0);
}

// Moon and Spencer 1942: 39.617708 % of the level illuminance on an upright front.
TEST(LitSkyline, under_the_overcast_sky_is_lit_by_two_fifths_of_the_level_illuminance) {
  const Rgb zenith = grey(zenith_luminance({kTraditionalOvercast}, lux(10000)).si);
  const Rgb lit = front_illuminance({{kTraditionalOvercast}, zenith, {}, grey(0.0)}, {1, 0, 0});
  EXPECT_NEAR(lit[1], 3961.7708, 0.001);
}

TEST(LitSkyline, with_the_sun_behind_the_camera_is_bright_and_against_it_is_not) {
  const SunDisc sun{toward(30 * kDegree, 180 * kDegree), kMeanSunHalfAngle_rad, 80000.0, grey(1.0)};
  const FrontLight light{{kUniformSky}, grey(0.0), sun, grey(0.0)};
  const LitSkyline north(ParallelBuilding{10, 10, {0, 1, 0}}, grey(0.3), light);
  EXPECT_NEAR(north.radiance(toward(0.1, 0.2))[1], 80000.0 * std::cos(30 * kDegree) * 0.3 / kPi, 1e-6);
  const LitSkyline south(ParallelBuilding{10, 10, {0, -1, 0}}, grey(0.3), light);
  EXPECT_EQ(south.radiance(toward(0.1, kPi))[1], 0.0);
}

TEST(LitSkyline, between_its_bearings_stays_near_the_integral) {
  const GeneralSky clear{kClearSky, toward(40 * kDegree, 75 * kDegree)};
  const FrontLight light{clear, grey(3000.0), {}, grey(0.0)};
  const LitSkyline lit(LevelSkyline{0.3}, grey(kPi), light);
  for (double azimuth_deg = 1.3; azimuth_deg < 360.0; azimuth_deg += 40.0) {
    const Direction outward = toward(0.1, azimuth_deg * kDegree);
    const double exact_lx = front_illuminance(light, front_facing(lit.skyline(), outward))[1];
    EXPECT_NEAR(lit.radiance(outward)[1] / exact_lx, 1.0, 0.002) << azimuth_deg;
  }
}

}  // namespace
}  // namespace fillside
