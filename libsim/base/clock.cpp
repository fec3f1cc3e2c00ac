#include "libsim/base/clock.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace fillside {
namespace {

std::optional<double> decimal(std::string_view text) {
  double value = 0.0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc{} || end != text.data() + text.size() || !(value >= 0.0)) return std::nullopt;
  return std::abs(value);  // "-0" is midnight too
}

}  // namespace

Direction to_clock(Clock clock) {
  const double angle = clock.hours * 30.0 * kDegree;
  return {std::sin(angle), std::cos(angle), 0.0};
}

Clock clock_of(const Direction& from_dish) {
  const double hours = std::atan2(from_dish.x(), from_dish.y()) / (30.0 * kDegree);
  return {hours <= 0.0 ? hours + 12.0 : hours};
}

std::optional<Clock> parse_clock(std::string_view text) {
  const auto colon = text.find(':');
  const auto hour = decimal(text.substr(0, colon));
  if (!hour || *hour > 12.0) return std::nullopt;
  if (colon == std::string_view::npos) return Clock{*hour};
  const auto minute = decimal(text.substr(colon + 1));
  if (!minute || *minute >= 60.0 || *hour != std::floor(*hour)) return std::nullopt;
  const double hours = *hour + *minute / 60.0;
  return Clock{hours > 12.0 ? hours - 12.0 : hours};
}

std::string to_text(Clock clock) {
  const double minutes =
      std::round(clock.hours * 60.0);  // in all, so that 9.9999999999 becomes 10 and not 9:60
  if (std::abs(clock.hours - minutes / 60.0) > 1e-9) return fmt::format("{}", clock.hours);
  const double hour = std::floor(minutes / 60.0), minute = minutes - 60.0 * hour;
  return minute == 0.0 ? fmt::format("{:.0f}", hour) : fmt::format("{:.0f}:{:02.0f}", hour, minute);
}

}  // namespace fillside
