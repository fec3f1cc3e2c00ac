#include "libsim/base/instant.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace fillside {
namespace {

constexpr int kMostOffset_min = 15 * 60;
constexpr double kMillisecondsPerDay = 86400000.0;

/// Takes exactly `count` digits off the front.
std::optional<int> take_digits(std::string_view& text, std::size_t count) {
  int value = 0;
  if (text.size() < count || text.front() < '0' || text.front() > '9') return std::nullopt;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + count, value);
  if (fault != std::errc{} || end != text.data() + count) return std::nullopt;
  text.remove_prefix(count);
  return value;
}

bool take(std::string_view& text, std::string_view any_of) {
  if (text.empty() || any_of.find(text.front()) == std::string_view::npos) return false;
  text.remove_prefix(1);
  return true;
}

/// Takes "30" or "30.125".
std::optional<double> take_second(std::string_view& text) {
  const std::size_t length = std::min(text.find_first_not_of("0123456789."), text.size());
  const std::string_view second = text.substr(0, length);
  double value = 0.0;
  const auto [end, fault] = std::from_chars(second.data(), second.data() + length, value);
  if (fault != std::errc{} || end != second.data() + length) return std::nullopt;
  if (const std::size_t whole = std::min(second.find('.'), length); whole != 2 || length == 3)
    return std::nullopt;
  text.remove_prefix(length);
  return value;
}

/// Takes "Z" or "+01:00".
std::optional<int> take_offset_min(std::string_view& text) {
  if (take(text, "Zz")) return 0;
  const int sign = take(text, "+") ? 1 : (take(text, "-") ? -1 : 0);
  const auto hours = sign == 0 ? std::nullopt : take_digits(text, 2);
  if (!hours || !take(text, ":")) return std::nullopt;
  const auto minutes = take_digits(text, 2);
  if (!minutes || *minutes > 59) return std::nullopt;
  return sign * (*hours * 60 + *minutes);
}

bool take_date(std::string_view& text, Instant& instant) {
  const auto year = take_digits(text, 4);
  const auto month = year && take(text, "-") ? take_digits(text, 2) : std::nullopt;
  const auto day = month && take(text, "-") ? take_digits(text, 2) : std::nullopt;
  if (day) instant.year = *year, instant.month = *month, instant.day = *day;
  return day.has_value();
}

bool take_time(std::string_view& text, Instant& instant) {
  const auto hour = take_digits(text, 2);
  const auto minute = hour && take(text, ":") ? take_digits(text, 2) : std::nullopt;
  const auto second = minute && take(text, ":") ? take_second(text) : std::nullopt;
  if (second) instant.hour = *hour, instant.minute = *minute, instant.second = *second;
  return second.has_value();
}

/// Days since the Julian date -0.5. Meeus eq. 7.1 without its time of day.
double midnight_julian_date(int year, int month, int day) {
  if (month <= 2) --year, month += 12;
  const double century = std::floor(year / 100.0);
  return std::floor(365.25 * (year + 4716)) + std::floor(30.6001 * (month + 1)) + day + 2.0 - century +
         std::floor(century / 4.0) - 1524.5;
}

}  // namespace

bool is_leap_year(int year) { return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0); }

int days_in_month(int year, int month) {
  constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap_year(year) ? 29 : kDays[month - 1];
}

int day_of_year(const Instant& instant) {
  int day = instant.day;
  for (int month = 1; month < instant.month; ++month) day += days_in_month(instant.year, month);
  return day;
}

std::string fault_of(const Instant& i) {
  if (i.year < 1950 || i.year > 2100) return fmt::format("{} is outside the years 1950 to 2100", i.year);
  if (i.month < 1 || i.month > 12) return fmt::format("there is no month {}", i.month);
  if (const int days = days_in_month(i.year, i.month); i.day < 1 || i.day > days)
    return fmt::format("{}-{:02} has {} days, not {}", i.year, i.month, days, i.day);
  if (i.hour < 0 || i.hour > 23) return fmt::format("there is no hour {}", i.hour);
  if (i.minute < 0 || i.minute > 59) return fmt::format("there is no minute {}", i.minute);
  if (!(i.second >= 0.0 && i.second < 60.0)) return fmt::format("there is no second {}", i.second);
  if (std::abs(i.offset_min) > kMostOffset_min)
    return fmt::format("no clock is {} minutes off", i.offset_min);
  return {};
}

double julian_date_ut(const Instant& i) {
  const double second_of_day = (i.hour * 60.0 + i.minute - i.offset_min) * 60.0 + i.second;
  return midnight_julian_date(i.year, i.month, i.day) + second_of_day / 86400.0;
}

// Meeus, Astronomical Algorithms, 2nd ed. 1998, pp. 63-64, after rounding to whole milliseconds, so that no
// part can come out as 60.
Instant instant_at(double julian_date_ut, int offset_min) {
  const double local = julian_date_ut + 0.5 + offset_min / 1440.0;
  double day_number = std::floor(local);
  double ms = std::round((local - day_number) * kMillisecondsPerDay);
  if (ms >= kMillisecondsPerDay) ms -= kMillisecondsPerDay, day_number += 1.0;
  const double alpha = std::floor((day_number - 1867216.25) / 36524.25);
  const double b = day_number + 1.0 + alpha - std::floor(alpha / 4.0) + 1524.0;
  const double c = std::floor((b - 122.1) / 365.25), d = std::floor(365.25 * c);
  const double e = std::floor((b - d) / 30.6001);
  Instant i;
  i.day = static_cast<int>(b - d - std::floor(30.6001 * e));
  i.month = static_cast<int>(e < 14.0 ? e - 1.0 : e - 13.0);
  i.year = static_cast<int>(i.month > 2 ? c - 4716.0 : c - 4715.0);
  i.hour = static_cast<int>(ms / 3600000.0);
  i.minute = static_cast<int>(std::fmod(ms, 3600000.0) / 60000.0);
  i.second = std::fmod(ms, 60000.0) / 1000.0;
  i.offset_min = offset_min;
  return i;
}

std::string to_text(const Instant& i) {
  const double ms = std::min(std::round(i.second * 1000.0), 59999.0);
  std::string text = fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02.0f}", i.year, i.month, i.day, i.hour,
                                 i.minute, std::floor(ms / 1000.0));
  if (const double fraction = std::fmod(ms, 1000.0); fraction > 0.0)
    text += fmt::format(".{:03.0f}", fraction);
  if (i.offset_min == 0) return text + "Z";
  const int size = std::abs(i.offset_min);
  return text + fmt::format("{}{:02}:{:02}", i.offset_min < 0 ? '-' : '+', size / 60, size % 60);
}

std::optional<Instant> parse_instant(std::string_view text) {
  Instant instant;
  if (!take_date(text, instant) || !take(text, "Tt ") || !take_time(text, instant)) return std::nullopt;
  const auto offset_min = take_offset_min(text);
  if (!offset_min || !text.empty()) return std::nullopt;
  instant.offset_min = *offset_min;
  return fault_of(instant).empty() ? std::optional(instant) : std::nullopt;
}

}  // namespace fillside
