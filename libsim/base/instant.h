// A moment as a clock on the wall shows it: date, time of day, and how far that clock is ahead of universal
// time. A daylight-saving hour belongs in the offset; without the offset the time says nothing about the sun.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace fillside {

struct Instant {
  int year = 2000, month = 1, day = 1;
  int hour = 12, minute = 0;
  double second = 0.0;
  int offset_min = 0;  ///< local time minus universal time: 60 for +01:00
  friend bool operator==(const Instant&, const Instant&) = default;
};

/// The Gregorian rule: every fourth year but three of four centuries.
bool is_leap_year(int year);
/// 28 to 31; month 1 to 12.
int days_in_month(int year, int month);
/// 1 for 1 January, 365 or 366 for 31 December.
int day_of_year(const Instant& instant);

/// What is impossible about the instant, for example "2023-02 has 28 days, not 29"; empty when nothing is.
/// Years are 1950 to 2100, offsets within 15 hours; a leap second (:60) is refused.
std::string fault_of(const Instant& instant);

/// Julian date in universal time, for any Gregorian date; exact to 40 microseconds in this century. Meeus,
/// Astronomical Algorithms, 2nd ed. 1998, eq. 7.1.
double julian_date_ut(const Instant& instant);
/// The instant of a Julian date on a clock with that offset, to the nearest millisecond.
Instant instant_at(double julian_date_ut, int offset_min);

/// RFC 3339, "2024-06-20T13:00:00+01:00" ("Z" for offset 0). Fractions of a second only where there are any,
/// to the millisecond.
std::string to_text(const Instant& instant);
/// Reads RFC 3339 (section 5.6; 'T' or a blank between date and time, the offset required); nothing when it
/// is not of that form or not possible.
std::optional<Instant> parse_instant(std::string_view text);

}  // namespace fillside
