#include "libsim/light/sky.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

constexpr SkyKind kAll[] = {SkyKind::uniform, SkyKind::overcast, SkyKind::cie_1, SkyKind::cie_5};

/// CIE S 011/E:2003, equations 4 and 5: gradation in the zenith angle Z, over its value at the zenith.
double cie_gradation(double a, double b, double zenith_angle) {
  return (1.0 + a * std::exp(b / std::cos(zenith_angle))) / (1.0 + a * std::exp(b));
}

/// Illuminance per zenith luminance on a plane that faces `normal`, under the sky alone.
double illuminance_per_zenith(SkyKind kind, const Direction& normal) {
  return tests::over_sphere(0.0, [&](const Direction& to_sky) {
    if (to_sky.z() <= 0.0) return 0.0;
    return relative_sky_luminance(kind, to_sky.z()) * std::max(0.0, to_sky.dot(normal));
  });
}

TEST(SkyLuminance, is_one_at_the_zenith) {
  for (const SkyKind kind : kAll) EXPECT_NEAR(relative_sky_luminance(kind, 1.0), 1.0, 1e-12);
}

// Moon and Spencer, "Illumination from a Non-Uniform Sky", Illum. Eng. 37, 1942: three times as bright at the
// zenith as at the horizon.
TEST(SkyLuminance, of_the_overcast_sky_is_a_third_at_the_horizon) {
  EXPECT_NEAR(relative_sky_luminance(SkyKind::overcast, 0.0), 1.0 / 3.0, 1e-12);
  EXPECT_NEAR(relative_sky_luminance(SkyKind::overcast, 0.5), 2.0 / 3.0, 1e-12);
}

// CIE S 011/E:2003: type 1 has a = 4, b = -0.7; type 5 a = 0, b = -1. At 40 and 15 degrees of height type 1
// gives 0.785644 and 0.424463 of the zenith.
TEST(SkyLuminance, of_cie_types_is_the_standards_gradation) {
  EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_1, std::sin(40 * kDegree)), 0.785644, 5e-7);
  EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_1, std::sin(15 * kDegree)), 0.424463, 5e-7);
  for (double height_deg = 1.0; height_deg <= 90.0; height_deg += 7.0) {
    const double sine = std::sin(height_deg * kDegree), zenith_angle = (90.0 - height_deg) * kDegree;
    EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_1, sine), cie_gradation(4.0, -0.7, zenith_angle), 1e-12);
    EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_5, sine), cie_gradation(0.0, -1.0, zenith_angle), 1e-12);
  }
}

TEST(SkyLuminance, has_its_limit_at_the_horizon_where_the_exponent_has_none) {
  // CIE S 011/E:2003, eq. 5 with Z = 90 degrees: phi = 1.
  EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_1, 0.0), 1.0 / (1.0 + 4.0 * std::exp(-0.7)), 1e-12);
  EXPECT_NEAR(relative_sky_luminance(SkyKind::cie_1, 1e-9), relative_sky_luminance(SkyKind::cie_1, 0.0),
              1e-12);
}

// Moon and Spencer 1942: 7 pi / 9; a uniform sky: pi. CIE S 011/E:2003, integrated: type 1 2.449541.
TEST(HorizontalIlluminance, per_zenith_luminance_is_as_published) {
  EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(SkyKind::overcast), 7.0 * kPi / 9.0, 1e-12);
  EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(SkyKind::uniform), kPi, 1e-9);
  EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(SkyKind::cie_1), 2.449541, 1e-6);
  EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(SkyKind::cie_5), kPi, 1e-9);
}

TEST(HorizontalIlluminance, agrees_with_quadrature_over_the_sky) {
  for (const SkyKind kind : kAll)
    EXPECT_NEAR(horizontal_illuminance_per_zenith_luminance(kind), illuminance_per_zenith(kind, {0, 0, 1}),
                1e-5);
}

// The integral of Moon and Spencer's sky over the quarter sphere before a wall: (3 / 7 pi) (pi / 2 + 4 / 3)
// of the horizontal illuminance, 39.6177 %; Littlefair, Site Layout Planning for Daylight and Sunlight (BRE,
// from memory) rounds it to "about 40 %". A uniform sky gives a wall half.
TEST(VerticalSkyComponent, unobstructed_is_the_closed_form) {
  const auto component = [](SkyKind kind) {
    return illuminance_per_zenith(kind, Direction(0.6, -0.8, 0.0)) /
           horizontal_illuminance_per_zenith_luminance(kind);
  };
  EXPECT_NEAR(component(SkyKind::overcast), 3.0 / (7.0 * kPi) * (0.5 * kPi + 4.0 / 3.0), 1e-5);
  EXPECT_NEAR(component(SkyKind::overcast), 0.396177, 1e-5);
  EXPECT_NEAR(component(SkyKind::uniform), 0.5, 1e-5);
}

// Moon and Spencer's sky integrated over what a long parallel wall leaves open above the profile angle t:
// (3 / 7 pi) ((pi / 2) (1 - sin t) + (4 / 3) cos^2 t) of the horizontal illuminance; 27.3129 % at 25 degrees.
TEST(VerticalSkyComponent, behind_a_long_wall_is_the_closed_form) {
  for (const double profile_deg : {10.0, 25.0, 45.0}) {
    const double t = profile_deg * kDegree;
    const double lit = tests::over_sphere(0.0, [&](const Direction& to_sky) {
      const bool open = to_sky.y() > 0.0 && to_sky.z() > 0.0 && std::atan2(to_sky.z(), to_sky.y()) > t;
      return open ? relative_sky_luminance(SkyKind::overcast, to_sky.z()) * to_sky.y() : 0.0;
    });
    const double component = lit / horizontal_illuminance_per_zenith_luminance(SkyKind::overcast);
    const double expected =
        3.0 / (7.0 * kPi) * (0.5 * kPi * (1.0 - std::sin(t)) + 4.0 / 3.0 * std::cos(t) * std::cos(t));
    EXPECT_NEAR(component, expected, 3e-4) << profile_deg;
  }
}

TEST(SkyNamed, knows_its_four_skies_and_no_other) {
  EXPECT_EQ(sky_named("uniform"), SkyKind::uniform);
  EXPECT_EQ(sky_named("overcast"), SkyKind::overcast);
  EXPECT_EQ(sky_named("cie 1"), SkyKind::cie_1);
  EXPECT_EQ(sky_named("cie 5"), SkyKind::cie_5);
  EXPECT_FALSE(sky_named("CIE 1"));
  EXPECT_FALSE(sky_named(""));
}

}  // namespace
}  // namespace fillside
