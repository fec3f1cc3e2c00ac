#include "libsim/light/sun.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/gauss_legendre.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

const SunDisc kSun{Direction(0.6, 0.0, 0.8), kMeanSunHalfAngle_rad, 80000.0, Rgb(1.2, 0.95, 0.9)};

/// A direction at an angle from the sun, in any of the ways round it.
Direction beside_sun(double angle_rad, double way_rad) {
  return frame_around(kSun.to_sun).to_world(tests::direction_at(angle_rad, way_rad));
}

// Wikipedia and the almanacs: "about half a degree"; 31'59" at the mean distance, 32'32" early in January and
// 31'28" early in July, when the Earth is 0.9833 and 1.0167 astronomical units away.
TEST(SunDisc, is_about_half_a_degree_across_and_changes_with_the_distance) {
  EXPECT_NEAR(2.0 * kMeanSunHalfAngle_rad / kDegree, 0.533, 5e-4);
  EXPECT_NEAR(2.0 * sun_half_angle_rad(0.9833) / kDegree * 60.0, 32.0 + 32.0 / 60.0, 0.02);
  EXPECT_NEAR(2.0 * sun_half_angle_rad(1.0167) / kDegree * 60.0, 31.0 + 28.0 / 60.0, 0.02);
}

// Lambert's cosine law: the radiance over the disc must add up to the illuminance of a plane that faces it.
TEST(SunDisc, gives_a_plane_that_faces_it_its_illuminance) {
  const Rgb radiance = radiance_of(kSun);
  const double projected_sr = integrated(gauss_legendre<8>(), 0.0, kSun.half_angle_rad, [](double angle) {
    return 2.0 * kPi * std::sin(angle) * std::cos(angle);
  });
  for (int channel = 0; channel < 3; ++channel)
    EXPECT_NEAR(radiance[channel] * projected_sr, kSun.normal_illuminance_lx * kSun.colour[channel], 1e-6);
  EXPECT_NEAR(solid_angle_sr(kSun), 6.800e-5, 1e-8);
}

TEST(SunDisc, ends_at_its_rim) {
  for (int way = 0; way < 12; ++way) {
    EXPECT_TRUE(is_on_disc(kSun, beside_sun(0.9999 * kSun.half_angle_rad, way * 30 * kDegree)));
    EXPECT_FALSE(is_on_disc(kSun, beside_sun(1.0001 * kSun.half_angle_rad, way * 30 * kDegree)));
  }
  EXPECT_TRUE(is_on_disc(kSun, kSun.to_sun));
  EXPECT_FALSE(is_on_disc(kSun, -kSun.to_sun));
}

TEST(SunDisc, lights_planes_by_the_cosine_and_none_from_behind) {
  EXPECT_NEAR(illuminance_by(kSun, {0, 0, 1})[1], 0.8 * 80000.0 * 0.95, 1e-9);
  EXPECT_NEAR(illuminance_by(kSun, {1, 0, 0})[0], 0.6 * 80000.0 * 1.2, 1e-9);
  EXPECT_EQ(illuminance_by(kSun, {-1, 0, 0}).maxCoeff(), 0.0);
}

}  // namespace
}  // namespace fillside
