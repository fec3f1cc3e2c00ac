#include "libsim/light/sun_day.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/space.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

constexpr EarthPlace kTromso{69.6492 * kDegree, 18.9553 * kDegree},
    kLondon{51.5074 * kDegree, -0.1278 * kDegree}, kSydney{-33.8688 * kDegree, 151.2093 * kDegree},
    kGolden{39.742476 * kDegree, -105.1786 * kDegree, 1830.14};

Instant day(int year, int month, int day, int offset_min) {
  return {year, month, day, 12, 0, 0.0, offset_min};
}

void expect_time(const std::optional<Instant>& found, const Instant& expected, double limit_s) {
  ASSERT_TRUE(found);
  EXPECT_NEAR((julian_date_ut(*found) - julian_date_ut(expected)) * 86400.0, 0.0, limit_s) << to_text(*found);
  EXPECT_EQ(found->offset_min, expected.offset_min);
}

// Reda and Andreas, NREL/TP-560-34302, rev. 2008, table A5.1: 13:12:43.46, 18:46:04.97 and 00:20:19.19 UT.
// Without the sun's parallax, which is up to 1 s here.
TEST(SunDay, is_that_of_the_worked_example_of_nrel) {
  const SunDay sun = sun_day(kGolden, day(2003, 10, 17, -420));
  EXPECT_EQ(sun.kind, DayKind::rises_or_sets);
  expect_time(sun.sunrise, {2003, 10, 17, 6, 12, 43.46, -420}, 2.0);
  expect_time(sun.transit, {2003, 10, 17, 11, 46, 4.97, -420}, 1.0);
  const SunDay eve = sun_day(kGolden, day(2003, 10, 16, -420));  // in UT it is the 17th already
  expect_time(eve.sunset, {2003, 10, 16, 17, 20, 19.19, -420}, 2.0);
}

// PyEphem 4.1.4 (libastro), the disc's middle 50' below the horizon, no air.
TEST(SunDay, in_both_hemispheres_is_as_another_library_has_it) {
  const SunDay london = sun_day(kLondon, day(2024, 6, 20, 60));
  expect_time(london.sunrise, {2024, 6, 20, 4, 43, 0.0, 60}, 3.0);
  expect_time(london.transit, {2024, 6, 20, 13, 2, 13.0, 60}, 3.0);
  expect_time(london.sunset, {2024, 6, 20, 21, 21, 27.0, 60}, 3.0);
  const SunDay sydney = sun_day(kSydney, day(2024, 12, 21, 660));
  expect_time(sydney.sunrise, {2024, 12, 21, 5, 40, 52.0, 660}, 3.0);
  expect_time(sydney.transit, {2024, 12, 21, 12, 53, 15.0, 660}, 3.0);
  expect_time(sydney.sunset, {2024, 12, 21, 20, 5, 38.0, 660}, 3.0);
  const SunDay tromso = sun_day(kTromso, day(2024, 2, 11, 60));
  expect_time(tromso.sunrise, {2024, 2, 11, 8, 36, 39.0, 60}, 5.0);
  expect_time(tromso.sunset, {2024, 2, 11, 15, 21, 28.0, 60}, 5.0);
}

TEST(SunDay, knows_polar_day_and_polar_night_at_both_ends_of_the_earth) {
  const EarthPlace south{-kTromso.latitude_rad, kTromso.longitude_rad};
  const Instant june = day(2024, 6, 21, 60), december = day(2024, 12, 21, 60);
  EXPECT_EQ(sun_day(kTromso, june).kind, DayKind::polar_day);
  EXPECT_EQ(sun_day(kTromso, december).kind, DayKind::polar_night);
  EXPECT_EQ(sun_day(south, june).kind, DayKind::polar_night);
  EXPECT_EQ(sun_day(south, december).kind, DayKind::polar_day);
  for (const SunDay& without : {sun_day(kTromso, june), sun_day(south, june)}) {
    EXPECT_FALSE(without.sunrise || without.sunset);
    EXPECT_TRUE(without.transit);
  }
  expect_time(sun_day(kTromso, june).transit, {2024, 6, 21, 11, 46, 5.0, 60}, 3.0);  // PyEphem 4.1.4
  EXPECT_EQ(sun_day({90 * kDegree, 0}, june).kind, DayKind::polar_day);
  EXPECT_EQ(sun_day({-90 * kDegree, 0}, june).kind, DayKind::polar_night);
}

// One year at a high latitude goes night, rising, day, setting, night; each turn happens once.
TEST(SunDay, goes_through_the_year_in_order) {
  int changes = 0;
  DayKind before = DayKind::polar_night;
  for (int month = 1; month <= 12; ++month)
    for (int d = 1; d <= days_in_month(2024, month); ++d) {
      const DayKind now = sun_day(kTromso, day(2024, month, d, 60)).kind;
      changes += now != before ? 1 : 0;
      before = now;
    }
  EXPECT_EQ(changes, 4);
  EXPECT_EQ(before, DayKind::polar_night);
}

TEST(SunDay, has_the_sun_at_the_horizon_when_it_rises_and_sets_and_highest_at_its_transit) {
  tests::Dice dice(14);
  for (int i = 0; i < 200; ++i) {
    const EarthPlace place{(130.0 * dice.throw_one() - 65.0) * kDegree,
                           (360.0 * dice.throw_one() - 180.0) * kDegree};
    const int offset_min = static_cast<int>(std::lround(place.longitude_rad / kDegree * 4.0));
    const Instant date = instant_at(2451545.0 + 36525.0 * dice.throw_one(), offset_min);
    const SunDay sun = sun_day(place, date);
    ASSERT_TRUE(sun.sunrise && sun.transit && sun.sunset) << to_text(date);
    for (const Instant& rim : {*sun.sunrise, *sun.sunset}) {
      EXPECT_NEAR(sun_position(place, rim).altitude_rad / kDegree, -50.0 / 60.0, 1e-4);
      EXPECT_EQ(rim.day, date.day);
    }
    EXPECT_NEAR(sun_position(place, *sun.transit).hour_angle_rad / kDegree, 0.0, 1e-4);
    EXPECT_LT(julian_date_ut(*sun.sunrise), julian_date_ut(*sun.transit));
    EXPECT_LT(julian_date_ut(*sun.transit), julian_date_ut(*sun.sunset));
    EXPECT_LT(sun_position(place, *sun.sunrise).azimuth_rad, kPi);  // it rises in the east
  }
}

}  // namespace
}  // namespace fillside
