#include "libsim/what_if/effort.h"

#include <gtest/gtest.h>

#include <numbers>

namespace fillside {
namespace {

TEST(Effort, a_share_of_the_light_is_a_number_of_stops) {
  // d log2 x = dx / (x ln 2).
  EXPECT_NEAR(half_width_stops(800.0, 8.0), 0.01 / std::numbers::ln2, 1e-12);
  EXPECT_EQ(half_width_stops(0.0, 8.0), 0.0);
}

TEST(Effort, by_precision_it_goes_on_until_the_error_bar_is_short_enough) {
  const EffortClock clock({.precision = stops(0.05), .seconds = {}});
  EXPECT_TRUE(clock.goes_on(0.051, 0.0));
  EXPECT_FALSE(clock.goes_on(0.05, 0.0));
  EXPECT_FALSE(clock.goes_on(0.0, 0.0));
}

TEST(Effort, by_time_the_error_bar_does_not_count) {
  const EffortClock patient({.precision = stops(0.05), .seconds = seconds(1e9)});
  EXPECT_TRUE(patient.goes_on(0.0, 0.0));
  EXPECT_TRUE(patient.goes_on(100.0, 0.0));
  EXPECT_FALSE(patient.goes_on(100.0, 2e9));  // what is next would take too long
  const EffortClock hasty({.precision = stops(0.05), .seconds = seconds(0.0)});
  EXPECT_FALSE(hasty.goes_on(100.0, 0.0));
  EXPECT_EQ(hasty.seconds_left(100.0), 0.0);
}

TEST(Effort, nothing_is_left_once_the_precision_is_reached) {
  const EffortClock clock({.precision = stops(0.05), .seconds = {}});
  EXPECT_EQ(clock.seconds_left(0.05), 0.0);
  EXPECT_EQ(clock.seconds_left(0.01), 0.0);
  const double left_s = clock.seconds_left(0.1);
  EXPECT_GE(left_s, 0.0);
  EXPECT_LE(left_s, 3.0 * clock.spent_s());  // four times the time for half the error
}

}  // namespace
}  // namespace fillside
