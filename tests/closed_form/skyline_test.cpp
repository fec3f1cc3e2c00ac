// What is left of the sky behind a building or over a rim, on a wall behind an endless window. Closed forms
// by integrating Moon and Spencer's overcast sky (Illum. Eng. 37, 1942) over what is seen, worked out here;
// adding up the sky in small steps gave 27.3127 % for 25 degrees. In the trade: a building 25 degrees up over
// the window leaves about 27 % (Littlefair, "Site layout planning for daylight and sunlight", BRE report 209,
// 1991; from memory).
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/sets.h"
#include "tests/closed_form/sunlight.h"

namespace fillside::tests {
namespace {

constexpr double kLevel_lx = 10000.0;
const Meter kOnWall = flat_meter({0, 0.01, 0}, kToWindow);

/// A bare opening 200 m wide, a centimetre before the meter: the whole outside but a ten-millionth.
Scene behind(const Skyline& skyline, int sky, double skyline_reflectance = 0.0) {
  return Scene(lit_by(sky_without_sun(sky, kUp, kLevel_lx, 0.0, skyline, skyline_reflectance),
                      in_window_wall(-100, 100, -100, 100)));
}

Estimate on_wall(const Skyline& skyline, int sky) { return read(behind(skyline, sky), kOnWall, kMany); }

Skyline building(double profile_deg) {
  return ParallelBuilding{10.0, 10.0 * std::tan(profile_deg * kDegree), kToWindow};
}

TEST(Skyline, that_is_open_leaves_the_wall_its_whole_share_of_the_sky) {
  EXPECT_NEAR(3.0 / (7.0 * kPi) * (0.5 * kPi + 4.0 / 3.0), 0.39617708, 1e-8);
  EXPECT_TRUE(agrees(on_wall(OpenSkyline{}, kTraditionalOvercast), 0.39617708 * kLevel_lx));
  EXPECT_TRUE(agrees(on_wall(OpenSkyline{}, kUniformSky), 0.5 * kLevel_lx));
}

TEST(Skyline, of_a_long_building_opposite_leaves_what_is_above_its_profile_angle) {
  for (const auto& [degrees, percent] : {std::pair{10.0, 35.348206},
                                         {20.0, 30.160980},
                                         {25.0, 27.312910},
                                         {30.0, 24.356138},
                                         {45.0, 15.370851},
                                         {60.0, 7.418168}}) {
    const double sine = std::sin(degrees * kDegree), cosine = std::cos(degrees * kDegree);
    EXPECT_NEAR(300.0 / (7.0 * kPi) * (0.5 * kPi * (1.0 - sine) + 4.0 / 3.0 * cosine * cosine), percent,
                1e-6);
    EXPECT_TRUE(agrees(on_wall(building(degrees), kTraditionalOvercast), 0.01 * percent * kLevel_lx))
        << degrees;
  }
  EXPECT_TRUE(agrees(on_wall(building(25.0), kUniformSky), 0.28869087 * kLevel_lx));
}

TEST(Skyline, that_is_level_leaves_what_is_above_its_altitude) {
  for (const auto& [degrees, percent] : {std::pair{25.0, 23.791698}, {45.0, 10.324190}}) {
    const double g = degrees * kDegree;
    const double left =
        2.0 / 3.0 *
        (0.5 * (0.5 * kPi - g) - 0.25 * std::sin(2.0 * g) + 2.0 / 3.0 * std::pow(std::cos(g), 3)) /
        (7.0 * kPi / 9.0);
    EXPECT_NEAR(100.0 * left, percent, 1e-6);
    EXPECT_TRUE(agrees(on_wall(LevelSkyline{g}, kTraditionalOvercast), 0.01 * percent * kLevel_lx))
        << degrees;
  }
}

// A matte front of reflectance rho under an even sky, over black ground: it gets half the level illuminance
// and shines with rho E / pi; below the profile angle t it fills sin t / 2 of the wall's view.
TEST(Skyline, sends_back_its_reflectance_of_the_sky_it_faces) {
  const double known = 0.4 * 0.5 * kLevel_lx * 0.5 * std::sin(25.0 * kDegree);
  const Scene scene = behind(building(25.0), kUniformSky, 0.4);
  const Measurement on = measure(scene, kOnWall, kMany);
  const auto name = [&](std::size_t s) { return scene.sources()[s].name; };
  EXPECT_TRUE(
      agrees(on.sum(0, [&](std::size_t s, std::size_t) { return name(s) == "window skyline"; }), known));
  EXPECT_TRUE(agrees(on.sum(0, [&](std::size_t s, std::size_t) { return name(s) == "window sky"; }),
                     0.28869087 * kLevel_lx));
}

TEST(Skyline, hides_a_sun_behind_it_and_lets_one_above_it_shine) {
  for (const auto& [altitude_deg, shines] : {std::pair{24.0, false}, {26.0, true}}) {
    Daylight light{{}, grey(0.0), sun_at(altitude_deg, 0.0, 60000.0), grey(0.0)};
    const Scene scene(lit_by(daylit(light, building(25.0), grey(0.0)), window_on_the_table()));
    const Estimate up = read(scene, flat_meter({0, 1, 0}, kUp), kFew);
    if (shines)
      EXPECT_TRUE(agrees(up, 60000.0 * std::sin(altitude_deg * kDegree), 1e-3));
    else
      EXPECT_EQ(up.value(), 0.0);
  }
}

}  // namespace
}  // namespace fillside::tests
