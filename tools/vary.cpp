#include "tools/vary.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "libsim/base/clock.h"
#include "libsim/scene/wording.h"
#include "libsim/what_if/freedom.h"
#include "tools/misuse.h"
#include "tools/variant.h"

namespace fillside::tools {
namespace {

constexpr int kMostValues = static_cast<int>(kMostSeriesSets);
constexpr const char* kExample = "for example --vary \"board.fill.distance=10cm..90cm/9\"";

/// A number with what follows it: 15 and "cm".
struct Amount {
  double number = 0.0;
  std::string unit;
};

std::optional<Amount> amount_of(const std::string& key, const std::string& text) {
  if (is_clock_key(key)) {
    const auto clock = parse_clock(text);
    return clock ? std::optional(Amount{clock->hours, ""}) : std::nullopt;
  }
  Amount amount;
  const char* end = text.data() + text.size();
  const auto [rest, fault] = std::from_chars(text.data(), end, amount.number);
  if (fault != std::errc{} || !std::isfinite(amount.number)) return std::nullopt;
  amount.unit = std::string(rest, end);
  amount.unit.erase(0, amount.unit.find_first_not_of(' '));
  const bool is_word = std::ranges::any_of(amount.unit, [](char c) { return c >= '0' && c <= '9'; });
  return is_word ? std::nullopt : std::optional(amount);  // "20x30 in", "1/8 in"
}

std::string text_of(const std::string& key, double number, const std::string& unit) {
  if (is_clock_key(key)) return to_text(Clock{number > 12.0 ? number - 12.0 : number});
  return fmt::format("{:.10g}{}{}", number, unit.empty() ? "" : " ", unit);
}

[[noreturn]] void refuse(const std::string& text, const std::string& why) {
  throw Misuse{fmt::format("--vary: {} {}; {}", in_quotes(text), why, kExample)};
}

/// Takes "/N" off the end of a range; nothing when it has none.
std::optional<int> take_count(std::string& last, const std::string& text) {
  const auto slash = last.rfind('/');
  if (slash == std::string::npos) return std::nullopt;
  int count = 0;
  const char* end = last.data() + last.size();
  const auto [rest, fault] = std::from_chars(last.data() + slash + 1, end, count);
  if (fault != std::errc{} || rest != end || count < 2 || count > kMostValues)
    refuse(text, fmt::format("has no number of values from 2 to {} after the /", kMostValues));
  last.erase(slash);
  return count;
}

/// "FROM..TO" or "FROM..TO/N"; nothing when it is no range.
std::optional<SeriesAxis> range_of(const std::string& key, const std::string& text) {
  const auto dots = text.find("..");
  if (dots == std::string::npos) return std::nullopt;
  std::string last = text.substr(dots + 2);
  std::optional<int> count = take_count(last, text);
  const auto from = amount_of(key, text.substr(0, dots)), to = amount_of(key, last);
  if (!from || !to) refuse(text, "is not a range from one number to another");
  if (!from->unit.empty() && from->unit != to->unit) refuse(text, "has two units");
  const double end = is_clock_key(key) && to->number <= from->number ? to->number + 12.0 : to->number;
  const double span = end - from->number;
  if (!count) {
    if (std::abs(span) < 0.5 || std::abs(span) > kMostValues - 1 || std::abs(span - std::round(span)) > 1e-9)
      refuse(text, "does not go in whole steps of one; say how many values");
    count = 1 + static_cast<int>(std::lround(std::abs(span)));
  }
  SeriesAxis axis{key, {}, {}, to->unit};
  for (int i = 0; i < *count; ++i) {
    axis.numbers.push_back(from->number + span * i / (*count - 1));
    axis.values.push_back(text_of(key, axis.numbers.back(), to->unit));
  }
  return axis;
}

SeriesAxis list_of(const std::string& key, const std::string& text) {
  SeriesAxis axis{key, split_list(text, ','), {}, ""};
  std::optional<std::string> unit;
  for (const std::string& value : axis.values) {
    if (value.empty()) throw Misuse{fmt::format("--vary: {} has an empty value", in_quotes(text))};
    const auto amount = amount_of(key, value);
    if (!amount || amount->unit != unit.value_or(amount->unit)) {
      axis.numbers.clear();
      return axis;
    }
    unit = amount->unit;
    const bool past_twelve =
        is_clock_key(key) && !axis.numbers.empty() && amount->number < axis.numbers.back();
    axis.numbers.push_back(amount->number + (past_twelve ? 12.0 : 0.0));
  }
  axis.unit = unit.value_or("");
  return axis;
}

/// "board.card.look_x": "look x" and "board card".
struct AxisWords {
  std::string what, owner;
};
AxisWords words_of(const std::string& key) {
  const auto last = key.rfind('.');
  if (last == std::string::npos) return {key, ""};
  AxisWords words{key.substr(last + 1), key.substr(0, last)};
  std::ranges::replace(words.owner, '.', ' ');
  std::ranges::replace(words.what, '_', ' ');
  if (words.owner == "window window") words.owner = "window";
  return words;
}

}  // namespace

SeriesAxis parse_axis(const std::string& text) {
  const auto equals = text.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == text.size())
    throw Misuse{fmt::format("--vary: {} is not KEY=VALUES; {}", in_quotes(text), kExample)};
  const std::string key = split_list(text.substr(0, equals), '=').front();
  const std::string values = split_list(text.substr(equals + 1), '\n').front();
  if (auto range = range_of(key, values)) return *range;
  SeriesAxis axis = list_of(key, values);
  if (axis.values.size() < 2)
    throw Misuse{fmt::format("--vary: {} is one value; give two or more", in_quotes(values))};
  return axis;
}

std::string edit_of(const SeriesAxis& axis, std::size_t value) {
  const std::string& text = axis.values[value];
  return is_clock_key(axis.key) && text.find(':') != std::string::npos && !text.starts_with('"')
             ? fmt::format("{}=\"{}\"", axis.key, text)
             : fmt::format("{}={}", axis.key, text);
}

std::string axis_title(const SeriesAxis& axis) {
  const auto [what, owner] = words_of(axis.key);
  if (owner.empty() || what == "used") return owner.empty() ? what : owner;
  return fmt::format("{} of {}", what, owner);
}

std::string axes_title(const std::vector<SeriesAxis>& axes) {
  if (axes.size() == 1) return axis_title(axes.front());
  const auto [what, owner] = words_of(axes.front().key);
  const auto [other_what, other_owner] = words_of(axes.back().key);
  if (owner == other_owner && !owner.empty() && what != "used" && other_what != "used")
    return fmt::format("{} and {} of {}", what, other_what, owner);
  return axis_title(axes.front()) + " and " + axis_title(axes.back());
}

std::string value_name(const SeriesAxis& axis, std::size_t value) {
  const std::string& text = axis.values[value];
  if (is_clock_key(axis.key) && parse_clock(text)) return text + " o'clock";
  if (!axis.key.ends_with(".used")) return text;
  const auto thing = words_of(axis.key).owner;
  return (text == "true" ? "with " : "without ") + thing.substr(thing.find(' ') + 1);
}

}  // namespace fillside::tools
