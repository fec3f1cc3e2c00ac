#include "libsim/view/clipping.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fillside {
namespace {

// ISO 12232:2019, saturation-based speed: the sensor is full at H = 78 / S lx s, and H = 0.65 L t / N^2.
// f/8, 1 s, ISO 100: L = 0.78 x 64 / 0.65 = 76.8 cd/m2.
TEST(Clipping, happens_at_78_lux_seconds_over_the_speed) {
  EXPECT_NEAR(clipping_luminance({f_number(8), seconds(1.0), 100}).si, 76.8, 1e-9);
  EXPECT_NEAR(clipping_luminance({f_number(8), seconds(0.5), 400}).si, 38.4, 1e-9);
  EXPECT_NEAR(standard_headroom().si, std::log2(9.6), 1e-12);
}

TEST(Clipping, a_stated_headroom_counts_from_what_the_meter_takes_for_right) {
  const Settings settings{f_number(4), seconds(1.0 / 64.0), 200};
  const double metered = 12.5 * 16.0 * 64.0 / 200.0;  // ISO 2720: L = K N^2 / (S t)
  EXPECT_NEAR(clipping_luminance(settings, stops(3.0)).si, 8.0 * metered, 1e-9);
}

TEST(Clipping, stops_are_left_until_the_luminance_is_reached_and_missing_beyond) {
  EXPECT_NEAR(stops_to_clipping(25.0, candela_per_m2(100.0)).value(), 2.0, 1e-12);
  EXPECT_NEAR(stops_to_clipping(200.0, candela_per_m2(100.0)).value(), -1.0, 1e-12);
}

// By the dome, exposed as ISO 2720 says, a matte white of 100 % that gets the same frontal light lies at
// 330 / (12.5 pi) of the metered luminance: 9.6 x 12.5 pi / 330 = 1.1424 of it is left, a fifth of a stop.
TEST(Clipping, leaves_a_perfect_white_a_fifth_of_a_stop_when_exposed_by_the_dome) {
  const double lux = 1320.0;
  const Settings settings = settings_for(ev100_of_dome(lux).value(), f_number(8), 100);
  ASSERT_NEAR(ev100_of(settings), std::log2(400.0), 0.17);
  const double exact = std::exp2(ev100_of_dome(lux).value() - ev100_of(settings));  // what the dial rounds
  EXPECT_NEAR(stops_to_clipping(lux / std::numbers::pi, clipping_luminance(settings)).value(),
              std::log2(9.6 * 12.5 * std::numbers::pi / 330.0 / exact), 1e-9);
}

}  // namespace
}  // namespace fillside
