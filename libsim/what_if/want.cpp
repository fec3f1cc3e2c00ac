#include "libsim/what_if/want.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <regex>

#include "libsim/base/limits.h"

namespace fillside {
namespace {

constexpr const char* kHow =
    "write it as \"lit:shadow = 3:1\", \"lit:shadow = 3:1 within 0.1 stop\", \"board.fill.gain.food shadow "
    ">= "
    "1\", \"falloff <= 1/3\" or \"sun on the dish <= 0 %\"";

/// "1.6", "3:1", "1/3"; the pattern has seen to its form.
std::optional<double> value_of(const std::string& text) {
  double first = 0.0, second = 1.0;
  const char* const end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, first);  // no locale's comma
  if (read.ptr != end) std::from_chars(read.ptr + 1, end, second);
  if (!(second > 0.0) || !std::isfinite(first / second)) return std::nullopt;
  return first / second;
}

std::string full_name(const std::string& figure) {
  if (figure == "lit:shadow") return "subject.lit_to_shadow";
  if (figure == "key:fill") return "meter.dish up.key_to_fill";
  if (figure == "falloff") return "dish.falloff";
  if (figure == "sun on the dish") return "dish.sunlit";
  return figure;
}

constexpr double kPointsOfAStop = 10.0;  ///< of figures in %

bool is_logarithmic(std::string_view unit) { return unit == "stops" || unit == "EV"; }

double on_scale(double value, std::string_view unit) {
  if (unit == "%") return value / kPointsOfAStop;
  return is_logarithmic(unit) ? value : std::log2(value);
}

}  // namespace

std::variant<Want, WantFault> parse_want(std::string_view text) {
  static const std::regex form(
      R"(\s*(.+?)\s*(>=|<=|=|\bat least\b|\bat most\b)\s*(\d{1,9}(?:\.\d{1,9})?(?:[:/]\d{1,9}(?:\.\d{1,9})?)?)\s*(?:stops?|lx|mm|EV|%)?(?:\s*(?:within|\+-|±)\s*(\d{1,3}(?:\.\d{1,9})?(?:/\d{1,3})?)\s*stops?)?\s*)");
  if (text.size() > kLongestWish)
    return WantFault{"this is too long for a wish", kHow};  // std::regex recurses
  const std::string whole(text);
  std::smatch found;
  if (!std::regex_match(whole, found, form)) return WantFault{"this is no wish for a figure", kHow};
  const auto value = value_of(found[3]);
  if (!value) return WantFault{"its value is no number", kHow};
  Want want;
  want.text = whole;
  want.figure = full_name(found[1]);
  const std::string relation = found[2];
  if (relation == "=") {
    want.exact = value;
    if (found[4].matched) want.tolerance_stops = value_of(found[4]).value_or(0.0);
    if (!(want.tolerance_stops > 0.0))
      return WantFault{"no set keeps a figure within nothing", "leave room, for example within 0.1 stop"};
  } else if (found[4].matched) {
    return WantFault{"within is for '='", kHow};
  } else {
    (relation == ">=" || relation == "at least" ? want.least : want.most) = value;
  }
  return want;
}

Estimate slack_stops(const Want& want, const Estimate& figure, std::string_view unit) {
  const Estimate here =
      unit == "%" ? figure / kPointsOfAStop : (is_logarithmic(unit) ? figure : in_stops(figure));
  if (want.exact) {
    const double aim = on_scale(*want.exact, unit);
    return want.tolerance_stops - (here.value() >= aim ? here - aim : aim - here);
  }
  return want.least ? here - on_scale(*want.least, unit) : on_scale(*want.most, unit) - here;
}

}  // namespace fillside
