#include "libsim/light/horizon.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/base/dice.h"

namespace fillside {
namespace {

void expect_same(const Direction& a, const Direction& b) {
  EXPECT_NEAR((a - b).norm(), 0.0, 1e-12) << a.transpose();
}

TEST(Horizon, bearings_go_clockwise_from_north) {
  expect_same(toward_azimuth(0.0), {0, 1, 0});
  expect_same(toward_azimuth(90 * kDegree), {1, 0, 0});
  expect_same(toward_azimuth(180 * kDegree), {0, -1, 0});
  expect_same(toward_azimuth(270 * kDegree), {-1, 0, 0});
  expect_same(toward(90 * kDegree, 1.0), {0, 0, 1});
}

// A set whose camera looks east has east on its y axis, south on its right.
TEST(Horizon, a_set_may_lie_any_way_on_the_compass) {
  const Compass looking_east{90 * kDegree};
  expect_same(toward_azimuth(90 * kDegree, looking_east), {0, 1, 0});
  expect_same(toward_azimuth(180 * kDegree, looking_east), {1, 0, 0});
  EXPECT_NEAR(azimuth_of({0, 1, 0}, looking_east), 90 * kDegree, 1e-12);
}

TEST(Horizon, a_direction_has_the_altitude_and_azimuth_that_give_it) {
  tests::Dice dice(5);
  for (int i = 0; i < 1000; ++i) {
    const Direction direction = dice.throw_direction();
    const Compass compass{10.0 * dice.throw_normal()};
    const double azimuth = azimuth_of(direction, compass);
    EXPECT_GE(azimuth, 0.0);
    EXPECT_LT(azimuth, 2.0 * kPi);
    expect_same(toward(altitude_of(direction), azimuth, compass), direction);
  }
}

TEST(Horizon, a_full_turn_starts_again_at_nought) {
  EXPECT_EQ(full_turn(0.0), 0.0);
  EXPECT_EQ(full_turn(-1e-20), 0.0);
  EXPECT_NEAR(full_turn(-90 * kDegree), 270 * kDegree, 1e-12);
  EXPECT_NEAR(full_turn(725 * kDegree), 5 * kDegree, 1e-12);
}

// Plane trigonometry. The head of the window 1.2 m above the table, the sun 35 degrees up and 25 degrees off
// the window's normal: the patch reaches h cos g / tan(altitude) into the room and h sin g / tan(altitude)
// aside.
TEST(Horizon, a_sun_patch_lies_where_trigonometry_puts_it) {
  const double altitude = 35 * kDegree, off_normal = 25 * kDegree;
  const Direction window_outward(0, -1, 0);
  const Direction to_sun = toward(altitude, 180 * kDegree + off_normal);
  const Point head(0, 0, 1.2), patch = head - to_sun * (head.z() / to_sun.z());
  EXPECT_NEAR(patch.z(), 0.0, 1e-15);
  EXPECT_NEAR(patch.y(), 1.553210, 5e-7);
  EXPECT_NEAR(std::abs(patch.x()), 0.724274, 5e-7);
  EXPECT_GT(patch.x(), 0.0);  // the sun stands west of south, the patch moves east
  EXPECT_NEAR(to_sun.dot(window_outward), 0.742404, 5e-7);
}

}  // namespace
}  // namespace fillside
