#include "libsim/light/outside.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

/// On a plane outdoors, by all parts of the outside together.
Rgb illuminance_lx(const Outside& outside, const Direction& normal) {
  return tests::over_sphere(grey(0.0), [&](const Direction& outward) {
    Rgb radiance = grey(0.0);
    for (const OutsidePart& part : outside) radiance += radiance_of(part, outward);
    return Rgb(radiance * std::max(0.0, outward.dot(normal)));
  });
}

TEST(SkyAndGround, give_open_level_ground_the_illuminance_asked_for) {
  for (const int kind : {kUniformSky, kTraditionalOvercast, 1})
    EXPECT_NEAR(luminance(illuminance_lx(sky_and_ground(kind, lux(12000), grey(0.2)), {0, 0, 1})), 12000.0,
                0.1);
}

// Lambert, Photometria, 1760: an evenly lit matte plane of reflectance rho sends rho E back down on a plane
// that faces it, and half of it on a wall.
TEST(SkyAndGround, send_from_the_ground_its_reflectance_of_the_light_up) {
  const Outside outside = sky_and_ground(kTraditionalOvercast, lux(10000), Rgb(0.1, 0.2, 0.3));
  const Rgb down = illuminance_lx(outside, {0, 0, -1});
  EXPECT_NEAR(down[0], 1000.0, 0.01);
  EXPECT_NEAR(down[1], 2000.0, 0.02);
  EXPECT_NEAR(down[2], 3000.0, 0.03);
  const Rgb on_wall = illuminance_lx({outside[1]}, {1, 0, 0});
  EXPECT_NEAR(on_wall[1], 1000.0, 0.02);
}

TEST(SkyAndGround, keep_to_their_own_half_of_the_directions) {
  const Outside outside = sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.2));
  ASSERT_EQ(outside.size(), 2u);
  EXPECT_EQ(outside[0].name, "sky");
  EXPECT_EQ(outside[1].name, "ground");
  EXPECT_EQ(radiance_of(outside[0], Direction(0.6, 0, -0.8)).maxCoeff(), 0.0);
  EXPECT_EQ(radiance_of(outside[1], Direction(0.6, 0, 0.8)).maxCoeff(), 0.0);
  EXPECT_GT(radiance_of(outside[0], Direction(0.6, 0, 0.8)).minCoeff(), 0.0);
  EXPECT_GT(radiance_of(outside[1], Direction(0.6, 0, -0.8)).minCoeff(), 0.0);
}

TEST(EvenOutside, looks_the_same_all_round_and_lights_every_plane_with_pi_times_it) {
  const Outside outside = even_outside(candela_per_m2(1000));
  ASSERT_EQ(outside.size(), 1u);
  EXPECT_EQ(radiance_of(outside[0], Direction(0, 0.6, -0.8))[2], 1000.0);
  for (const Direction& normal : {Direction(0, 0, 1), Direction(0.6, 0.8, 0), Direction(0, 0, -1)})
    EXPECT_NEAR(illuminance_lx(outside, normal)[1], 1000.0 * kPi, 0.05);
}

}  // namespace
}  // namespace fillside
