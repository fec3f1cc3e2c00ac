#include "libsim/what_if/freedom.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <regex>

#include "libsim/base/clock.h"
#include "libsim/base/limits.h"

namespace fillside {
namespace {

constexpr const char* kHow =
    "for example board.fill.distance=15cm..80cm, or board.fill.sheet=A4,A3,A2 to choose from";

struct Bound {
  double number;
  std::string unit;
};

std::optional<Bound> bound_of(const std::string& text) {
  static const std::regex form(R"(\s*(-?\d{1,9}(?:\.\d{1,9})?)\s*([A-Za-z]*)\s*)");
  std::smatch found;
  if (!std::regex_match(text, found, form)) return std::nullopt;
  const std::string digits = found[1];
  Bound bound{0.0, found[2]};
  std::from_chars(digits.data(), digits.data() + digits.size(), bound.number);  // no locale's comma
  return bound;
}

/// The smallest step that a hand can set.
double step_of(const Freedom& freedom) {
  struct Step {
    std::string_view unit;
    double step;
  };
  constexpr std::array<Step, 6> kSteps{
      {{"mm", 1}, {"cm", 0.1}, {"m", 0.001}, {"in", 0.1}, {"ft", 0.01}, {"deg", 0.1}}};
  if (freedom.clock) return 1.0 / 60.0;
  for (const Step& step : kSteps)
    if (step.unit == freedom.unit) return step.step;
  return 0.001;
}

std::vector<std::string> split(const std::string& text) {
  static const std::regex comma(R"(\s*,\s*)");
  return {std::sregex_token_iterator(text.begin(), text.end(), comma, -1), {}};
}

std::variant<Freedom, FreedomFault> range_of(Freedom freedom, const std::string& from,
                                             const std::string& to) {
  freedom.clock = is_clock_key(freedom.key);
  if (freedom.clock) {
    const auto least = parse_clock(from), most = parse_clock(to);
    if (!least || !most) return FreedomFault{"its ends are no clock positions", "for example 1:30..5"};
    freedom.least = least->hours;
    freedom.most = most->hours < least->hours ? most->hours + 12.0 : most->hours;  // past 12 o'clock
    if (freedom.most == freedom.least)
      return FreedomFault{"its ends are one place", "0..12 goes all the way round, from behind the dish"};
    return freedom;
  }
  const auto least = bound_of(from), most = bound_of(to);
  if (!least || !most) return FreedomFault{"its ends are no values", kHow};
  if (!least->unit.empty() && least->unit != most->unit)
    return FreedomFault{"its ends have different units", "write both in the same unit"};
  if (!(least->number < most->number))
    return FreedomFault{"its end is not after its start", "write the smaller value first"};
  freedom.least = least->number;
  freedom.most = most->number;
  freedom.unit = most->unit;
  return freedom;
}

}  // namespace

bool is_clock_key(std::string_view key) {
  const std::string_view last = key.substr(key.rfind('.') + 1);
  return last == "clock" || last == "faces" || last == "faces_clock";
}

std::string Freedom::text_at(double share) const {
  const double step = step_of(*this);
  const double value = std::clamp(std::round((least + share * (most - least)) / step) * step, least, most);
  if (clock) return to_text(Clock{value > 12.0 ? value - 12.0 : value});
  const std::string number = fmt::format("{:.3f}", value);
  const std::string_view trimmed = std::string_view(number).substr(0, number.find_last_not_of("0") + 1);
  return fmt::format("{}{}", trimmed.ends_with('.') ? trimmed.substr(0, trimmed.size() - 1) : trimmed, unit);
}

std::variant<Freedom, FreedomFault> parse_freedom(std::string_view text) {
  if (text.size() > kLongestWish)
    return FreedomFault{"this is too long for a key and its values", kHow};  // std::regex recurses
  const std::string whole(text);
  const auto equals = whole.rfind('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == whole.size())
    return FreedomFault{"this is not KEY=VALUES", kHow};
  Freedom freedom;
  freedom.key = whole.substr(0, equals);
  const std::string values = whole.substr(equals + 1);
  if (const auto dots = values.find(".."); dots != std::string::npos)
    return range_of(std::move(freedom), values.substr(0, dots), values.substr(dots + 2));
  freedom.choices = split(values);
  return freedom;
}

}  // namespace fillside
