// CIE S 011/E:2003 (ISO 15469:2004), "Spatial distribution of daylight - CIE standard general sky".
#include "libsim/light/general_sky.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "libsim/light/horizon.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

GeneralSky with_sun_at(int type, double altitude_deg, double azimuth_deg = 0.0) {
  return {type, toward(altitude_deg * kDegree, azimuth_deg * kDegree)};
}

double luminance_at(const GeneralSky& sky, double altitude_deg, double azimuth_deg) {
  return relative_luminance(sky, toward(altitude_deg * kDegree, azimuth_deg * kDegree));
}

/// The standard's formula written out once more, in angles.
double by_the_standard(const double (&row)[5], double zenith_angle, double from_sun,
                       double sun_zenith_angle) {
  const auto [a, b, c, d, e] = row;
  const auto phi = [&](double z) { return 1.0 + a * std::exp(b / std::cos(z)); };
  const auto f = [&](double chi) {
    return 1.0 + c * (std::exp(d * chi) - std::exp(d * kPi / 2.0)) + e * std::cos(chi) * std::cos(chi);
  };
  return f(from_sun) * phi(zenith_angle) / (f(sun_zenith_angle) * phi(0.0));
}

// Table 1 of the standard. Here the direction and the sun stand over the same bearing, so that the angle
// between them is the difference of their altitudes.
TEST(GeneralSky, has_the_parameters_of_the_standards_table) {
  constexpr double kTable[15][5] = {
      {4, -0.7, 0, -1, 0},        {4, -0.7, 2, -1.5, 0.15},  {1.1, -0.8, 0, -1, 0},
      {1.1, -0.8, 2, -1.5, 0.15}, {0, -1, 0, -1, 0},         {0, -1, 2, -1.5, 0.15},
      {0, -1, 5, -2.5, 0.3},      {0, -1, 10, -3, 0.45},     {-1, -0.55, 2, -1.5, 0.15},
      {-1, -0.55, 5, -2.5, 0.3},  {-1, -0.55, 10, -3, 0.45}, {-1, -0.32, 10, -3, 0.45},
      {-1, -0.32, 16, -3, 0.3},   {-1, -0.15, 16, -3, 0.3},  {-1, -0.15, 24, -2.8, 0.15}};
  for (int type = 1; type <= 15; ++type)
    for (const double altitude_deg : {3.0, 20.0, 55.0, 90.0})
      EXPECT_NEAR(luminance_at(with_sun_at(type, 35.0), altitude_deg, 0.0),
                  by_the_standard(kTable[type - 1], (90.0 - altitude_deg) * kDegree,
                                  std::abs(altitude_deg - 35.0) * kDegree, 55.0 * kDegree),
                  1e-9)
          << type;
}

// Worked out from the standard's formula with the sun 40 degrees high: altitude and bearing from the sun.
TEST(GeneralSky, has_its_luminance_at_single_points) {
  const GeneralSky clear = with_sun_at(12, 40.0, 70.0);
  const double expected[][3] = {{40, 0, 8.910933}, {40, 90, 1.027080}, {40, 180, 0.766323},
                                {15, 0, 5.649849}, {15, 90, 1.520000}, {15, 180, 1.522331}};
  for (const auto& [altitude_deg, from_sun_deg, luminance] : expected) {
    EXPECT_NEAR(luminance_at(clear, altitude_deg, 70.0 + from_sun_deg), luminance, 6e-7);
    EXPECT_NEAR(luminance_at(clear, altitude_deg, 70.0 - from_sun_deg), luminance, 6e-7);
  }
  const double of_type[][3] = {
      {1, 0.785644, 0.424463}, {3, 0.881284, 0.702691}, {8, 6.222748, 2.180506}, {15, 13.024380, 8.750178}};
  for (const auto& [type, at_40, at_15] : of_type) {
    EXPECT_NEAR(luminance_at(with_sun_at(static_cast<int>(type), 40.0), 40.0, 0.0), at_40, 6e-7) << type;
    EXPECT_NEAR(luminance_at(with_sun_at(static_cast<int>(type), 40.0), 15.0, 0.0), at_15, 6e-7) << type;
  }
}

TEST(GeneralSky, is_one_at_the_zenith_and_black_below_the_horizon) {
  for (int type = 1; type <= 16; ++type) {
    EXPECT_NEAR(luminance_at(with_sun_at(type, 30.0), 90.0, 0.0), 1.0, 1e-12) << type;
    EXPECT_EQ(luminance_at(with_sun_at(type, 30.0), -1.0, 0.0), 0.0) << type;
    EXPECT_GT(luminance_at(with_sun_at(type, 30.0), 1e-9, 200.0), 0.0) << type;
  }
}

// The standard's formula integrated by the midpoint rule on 3000 x 6000 cells with Richardson's
// extrapolation, and by a Gauss product rule; the sun 60 degrees high.
TEST(GeneralSky, gives_level_ground_so_much_per_zenith_luminance) {
  constexpr double kExpected_sr[15] = {2.449541, 2.086023, 2.769988, 2.315419, 3.141593,
                                       2.584160, 2.421225, 2.328380, 3.459323, 3.170260,
                                       2.989061, 3.190573, 3.025853, 3.216957, 3.015856};
  for (int type = 1; type <= 15; ++type)
    EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(with_sun_at(type, 60.0, 123.0)),
                kExpected_sr[type - 1], 2e-6)
        << type;
}

// Moon and Spencer, "Illumination from a Non-Uniform Sky", Illum. Eng. 37, 1942: 7 pi / 9 on level ground,
// and on a wall (3 / 7 pi) (pi / 2 + 4 / 3) of that, 39.617708 %. An even sky: pi, and pi / 2.
TEST(GeneralSky, of_overcast_and_uniform_kind_has_closed_forms) {
  const GeneralSky overcast{kTraditionalOvercast}, uniform{kUniformSky};
  const double level_sr = horizontal_illuminance_per_zenith_luminance(overcast);
  EXPECT_NEAR(level_sr, 7.0 * kPi / 9.0, 1e-10);
  EXPECT_NEAR(vertical_illuminance_per_zenith_luminance(overcast, {0.6, -0.8, 0}) / level_sr, 0.39617708,
              5e-9);
  EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(uniform), kPi, 1e-10);
  EXPECT_NEAR(vertical_illuminance_per_zenith_luminance(uniform, {0.6, -0.8, 0}), 0.5 * kPi, 1e-10);
}

// Against the midpoint rule in other coordinates, around the zenith. That rule's own error is what the limit
// allows.
TEST(GeneralSky, agrees_with_quadrature_over_the_sky_on_any_plane) {
  const Direction planes[] = {{0, 0, 1},
                              {0, 1, 0},
                              {0.6, -0.8, 0},
                              Direction(0.3, 0.5, 0.7).normalized(),
                              Direction(-0.4, 0.2, -0.6).normalized()};
  for (const int type : {4, 8, 12, 15})
    for (const double sun_deg : {2.0, 45.0, 89.0}) {
      const GeneralSky sky = with_sun_at(type, sun_deg, 20.0);
      for (const Direction& normal : planes) {
        const double expected_sr = tests::over_sphere(
            0.0,
            [&](const Direction& d) {
              return d.z() > 0.0 && d.dot(normal) > 0.0 ? relative_luminance(sky, d) * d.dot(normal) : 0.0;
            },
            600, 600);
        EXPECT_NEAR(illuminance_per_zenith_luminance(sky, normal) / expected_sr, 1.0, 2e-4)
            << type << " sun " << sun_deg << " plane " << normal.transpose();
      }
    }
}

TEST(GeneralSky, does_not_care_which_way_north_is) {
  const double at_0 = horizontal_illuminance_per_zenith_luminance(with_sun_at(12, 25.0, 0.0));
  for (const double azimuth_deg : {33.0, 180.0, 271.0})
    EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(with_sun_at(12, 25.0, azimuth_deg)), at_0,
                1e-7 * at_0);
}

TEST(GeneralSky, has_the_zenith_that_gives_the_illuminance_asked_for) {
  EXPECT_NEAR(zenith_luminance({kTraditionalOvercast}, lux(10000)).si, 10000.0 * 9.0 / (7.0 * kPi), 1e-5);
  const GeneralSky clear = with_sun_at(12, 30.0);
  const double zenith = zenith_luminance(clear, lux(15000)).si;
  const double lit_lx = tests::over_sphere(
      0.0, [&](const Direction& d) { return relative_luminance(clear, d) * std::max(0.0, d.z()) * zenith; },
      150, 150);
  EXPECT_NEAR(lit_lx, 15000.0, 15.0);
}

TEST(GeneralSky, is_called_by_its_number_or_by_a_name_of_its_own) {
  std::set<std::string_view> names;
  for (int type = 1; type <= 16; ++type) {
    EXPECT_EQ(sky_type_named(sky_name(type)), type);
    names.insert(sky_name(type));
  }
  EXPECT_EQ(names.size(), 16u);
  EXPECT_EQ(sky_type_named("cie 1"), 1);
  EXPECT_EQ(sky_type_named("cie 15"), 15);
  EXPECT_EQ(sky_type_named("clear"), kClearSky);
  EXPECT_EQ(sky_type_named("overcast"), kTraditionalOvercast);
  EXPECT_EQ(sky_type_named("uniform"), kUniformSky);
  for (const char* name : {"cie 16", "cie 0", "cie", "Clear", ""}) EXPECT_FALSE(sky_type_named(name)) << name;
}

}  // namespace
}  // namespace fillside
