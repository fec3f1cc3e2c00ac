#include "libsim/base/instant.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace fillside {
namespace {

// Reda and Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302, rev.
// 2008, tables A4.1 and A5.1.
TEST(JulianDate, is_as_tabulated) {
  EXPECT_EQ(julian_date_ut({2000, 1, 1, 12}), 2451545.0);
  EXPECT_EQ(julian_date_ut({1987, 1, 27, 0}), 2446822.5);
  EXPECT_EQ(julian_date_ut({1988, 6, 19, 12}), 2447332.0);
  EXPECT_EQ(julian_date_ut({1900, 1, 1, 0}), 2415020.5);
  EXPECT_EQ(julian_date_ut({1600, 12, 31, 0}), 2305812.5);
  EXPECT_NEAR(julian_date_ut({2003, 10, 17, 12, 30, 30.0, -7 * 60}), 2452930.312847, 5e-7);
}

TEST(JulianDate, counts_every_day_of_the_calendar_once) {
  double expected = julian_date_ut({1950, 1, 1, 12});
  for (int year = 1950; year <= 2100; ++year)
    for (int month = 1; month <= 12; ++month)
      for (int day = 1; day <= days_in_month(year, month); ++day)
        ASSERT_EQ(julian_date_ut({year, month, day, 12}), expected++) << year << "-" << month << "-" << day;
}

TEST(JulianDate, takes_the_offset_off) {
  EXPECT_EQ(julian_date_ut({2024, 6, 20, 13, 0, 0.0, 60}), julian_date_ut({2024, 6, 20, 12}));
  EXPECT_EQ(julian_date_ut({2024, 1, 1, 5, 30, 0.0, 330}), julian_date_ut({2024, 1, 1, 0}));
  EXPECT_EQ(julian_date_ut({2023, 12, 31, 18, 0, 0.0, -360}), julian_date_ut({2024, 1, 1, 0}));
}

// The papal bull Inter gravissimas, 1582: of the centuries only every fourth is a leap year.
TEST(Calendar, has_the_gregorian_leap_years) {
  for (const int year : {1952, 2000, 2024, 2096}) EXPECT_TRUE(is_leap_year(year)) << year;
  for (const int year : {1900, 1951, 2023, 2100}) EXPECT_FALSE(is_leap_year(year)) << year;
  EXPECT_EQ(day_of_year({2024, 12, 31}), 366);
  EXPECT_EQ(day_of_year({2023, 12, 31}), 365);
  EXPECT_EQ(day_of_year({2023, 3, 1}), 60);
  EXPECT_EQ(day_of_year({2024, 3, 1}), 61);
}

TEST(Instant, that_cannot_be_is_named_as_such) {
  EXPECT_EQ(fault_of({2024, 2, 29}), "");
  EXPECT_EQ(fault_of({2023, 2, 29}), "2023-02 has 28 days, not 29");
  EXPECT_EQ(fault_of({2024, 4, 31}), "2024-04 has 30 days, not 31");
  EXPECT_EQ(fault_of({1949, 12, 31}), "1949 is outside the years 1950 to 2100");
  EXPECT_EQ(fault_of({2024, 13, 1}), "there is no month 13");
  EXPECT_EQ(fault_of({2024, 1, 1, 24}), "there is no hour 24");
  EXPECT_EQ(fault_of({2024, 1, 1, 0, 60}), "there is no minute 60");
  EXPECT_EQ(fault_of({2024, 1, 1, 0, 0, 60.0}), "there is no second 60");
  EXPECT_NE(fault_of({2024, 1, 1, 0, 0, std::nan("")}), "");
  EXPECT_EQ(fault_of({2024, 1, 1, 0, 0, 0.0, 901}), "no clock is 901 minutes off");
}

// Klyne and Newman, RFC 3339, "Date and Time on the Internet: Timestamps", 2002, section 5.8.
TEST(Instant, is_read_and_written_as_rfc_3339_has_it) {
  const auto fraction = parse_instant("1985-04-12T23:20:50.52Z");
  ASSERT_TRUE(fraction);
  EXPECT_EQ(to_text(*fraction), "1985-04-12T23:20:50.520Z");
  const auto pacific = parse_instant("1996-12-19T16:39:57-08:00");
  ASSERT_TRUE(pacific);
  EXPECT_EQ(*pacific, (Instant{1996, 12, 19, 16, 39, 57.0, -480}));
  EXPECT_EQ(to_text(*pacific), "1996-12-19T16:39:57-08:00");
  EXPECT_EQ(julian_date_ut(*pacific), julian_date_ut(*parse_instant("1996-12-20T00:39:57Z")));
  EXPECT_TRUE(parse_instant("2024-06-20 13:00:00+05:45"));
}

TEST(Instant, of_any_other_form_is_refused) {
  for (const char* text :
       {"", "2024-06-20", "2024-06-20T13:00:00", "2024-06-20T13:00Z", "2024-06-20T13:00:00.Z",
        "2024-6-20T13:00:00Z", "2024-06-20T13:00:5Z", "2024-06-20T13:00:00+1:00", "2024-06-20T13:00:00+01:60",
        "2024-06-20T13:00:00+01", "2024-06-20T13:00:00Z ", "2023-02-29T12:00:00Z", "-024-06-20T13:00:00Z",
        "2024-06-20T13:00:60Z", "2024-06-20T1e:00:00Z", "2024-06-20T13:00:1e1Z"})
    EXPECT_FALSE(parse_instant(text)) << text;
}

TEST(Instant, never_shows_sixty_seconds) {
  EXPECT_EQ(to_text(Instant{2024, 12, 31, 23, 59, 59.99996}), "2024-12-31T23:59:59.999Z");
  EXPECT_EQ(to_text(instant_at(julian_date_ut({2024, 12, 31, 23, 59, 59.99996}), 0)), "2025-01-01T00:00:00Z");
}

RC_GTEST_PROP(Instant, of_a_julian_date_is_the_one_that_gives_it,
              (std::uint32_t of_the_years, std::uint8_t quarters)) {
  const double date = 2433283.5 + of_the_years * 0x1p-32 * 55000.0;
  const Instant instant = instant_at(date, (quarters % 96 - 48) * 15);
  RC_ASSERT(fault_of(instant).empty());
  RC_ASSERT(std::abs(julian_date_ut(instant) - date) < 1e-8);
  RC_ASSERT(parse_instant(to_text(instant)) == instant);
}

}  // namespace
}  // namespace fillside
