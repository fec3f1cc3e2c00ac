#include "libsim/base/clock.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace fillside {
namespace {

void expect_direction(double hours, double x, double y) {
  EXPECT_NEAR((to_clock({hours}) - Direction(x, y, 0.0)).norm(), 0.0, 1e-15) << hours;
}

TEST(Clock, the_camera_is_at_6_right_is_3_behind_is_12_left_is_9) {
  expect_direction(6.0, 0, -1);
  expect_direction(3.0, 1, 0);
  expect_direction(12.0, 0, 1);
  expect_direction(0.0, 0, 1);
  expect_direction(9.0, -1, 0);
  expect_direction(10.5, -std::sqrt(0.5), std::sqrt(0.5));
}

TEST(Clock, the_hour_of_a_direction_is_the_hour_that_gives_it) {
  for (double hours = 0.25; hours <= 12.0; hours += 0.25)
    EXPECT_NEAR(clock_of(to_clock({hours})).hours, hours, 1e-12);
  EXPECT_EQ(clock_of({0, 1, 0}).hours, 12.0);
}

TEST(Clock, is_read_as_an_hour_with_minutes_or_a_decimal) {
  const std::pair<const char*, double> good[] = {{"9", 9.0},   {"9:30", 9.5},           {"10.5", 10.5},
                                                 {"12", 12.0}, {"12:30", 0.5},          {"0:30", 0.5},
                                                 {"0", 0.0},   {"6:05", 6.0 + 5 / 60.0}};
  for (const auto& [text, hours] : good) {
    ASSERT_TRUE(parse_clock(text)) << text;
    EXPECT_DOUBLE_EQ(parse_clock(text)->hours, hours) << text;
  }
}

TEST(Clock, what_is_no_hour_is_refused) {
  for (const char* text : {"", ":", "9:", ":30", "13", "12.5", "-1", "9:60", "9:-5", "9.5:30", "nan", "inf",
                           "9 o'clock", " 9", "9:3x", "9:30:00", "1e99"})
    EXPECT_FALSE(parse_clock(text)) << text;
}

TEST(Clock, is_written_as_people_say_it) {
  EXPECT_EQ(to_text(Clock{9.0}), "9");
  EXPECT_EQ(to_text(Clock{9.5}), "9:30");
  EXPECT_EQ(to_text(Clock{6.0 + 5 / 60.0}), "6:05");
  EXPECT_EQ(to_text(Clock{9.99999999999}), "10");
  EXPECT_EQ(to_text(Clock{10.123}), "10.123");
}

RC_GTEST_PROP(Clock, what_is_written_is_read_back, (std::uint32_t twelfth)) {
  const Clock clock{twelfth * 0x1p-32 * 12.0};
  const auto back = parse_clock(to_text(clock));
  RC_ASSERT(back.has_value());
  RC_ASSERT(std::abs(back->hours - clock.hours) < 2e-9);
}

}  // namespace
}  // namespace fillside
