#include "libsim/scene/value_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/limits.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

std::string number_text(const SourceNumber& number) {
  return number.is_integer ? fmt::format("{:.0f}", number.value) : fmt::format("{}", number.value);
}

/// The value as a message shows it.
std::string shown(const SourceValue& value) {
  if (const auto* truth = std::get_if<bool>(&value.what)) return *truth ? "true" : "false";
  if (const auto* number = std::get_if<SourceNumber>(&value.what)) return number_text(*number);
  if (const auto* text = std::get_if<std::string>(&value.what)) return in_quotes(*text);
  return std::holds_alternative<SourceArray>(value.what) ? "a list" : "a table";
}

Fault not_a(const SourceValue& value, std::string_view wanted, std::string remedy) {
  return {fmt::format("{} is not {}", shown(value), wanted), std::move(remedy)};
}

/// A bound as people write it.
template <class Q>
std::string bound_text(double si) {
  if constexpr (std::is_same_v<Q, double>)
    return fmt::format("{:.4g}", si);
  else if constexpr (std::is_same_v<Q, Length>)
    return length_text(si);
  else if constexpr (std::is_same_v<Q, Angle>)
    return fmt::format("{:.4g} deg", in_degrees({si}));
  else
    return to_text(Q{si});
}

template <class Q>
std::optional<Fault> range_fault(const SourceValue& value, const Field& field, double si) {
  if (si >= field.least && si <= field.most) return std::nullopt;
  std::string remedy;
  if (!std::isfinite(field.most))
    remedy = fmt::format("it may be {} or more", bound_text<Q>(field.least));
  else if (!std::isfinite(field.least))
    remedy = fmt::format("it may be {} or less", bound_text<Q>(field.most));
  else
    remedy = fmt::format("it may be {} to {}", bound_text<Q>(field.least), bound_text<Q>(field.most));
  return Fault{fmt::format("{} is too {}", shown(value), si < field.least ? "small" : "large"), remedy};
}

std::optional<Fault> finite_number(const SourceValue& value, std::string_view wanted, double& out) {
  const auto* number = std::get_if<SourceNumber>(&value.what);
  if (!number) return not_a(value, wanted, "write it without quotes and without a unit");
  if (!std::isfinite(number->value)) return not_a(value, "a finite number", "write it in digits, as in 0.5");
  out = number->value + 0.0;  // no negative zero
  return std::nullopt;
}

/// A bare number is told its unit is missing; what the parser says of texts is passed on.
template <class Q>
std::optional<Fault> read_quantity(const SourceValue& value, const Field& field, Q& out) {
  const std::string as_in = fmt::format("write it as \"{}\"", example_of<Q>());
  if (const auto* number = std::get_if<SourceNumber>(&value.what)) {
    if (!std::isfinite(number->value)) return not_a(value, "a finite number", as_in);
    return Fault{shown(value) + " has no unit", as_in};
  }
  const auto* text = std::get_if<std::string>(&value.what);
  if (!text) return not_a(value, kind_of<Q>(), as_in);
  const Parsed<Q> parsed = parse_quantity<Q>(*text);
  if (!parsed.value && *text != tame(*text))
    return not_a(value, kind_of<Q>(), as_in);  // not to be quoted whole
  if (!parsed.value) return Fault{parsed.fault, parsed.remedy};
  if (!std::isfinite(parsed.value->si)) return not_a(value, "a finite number", as_in);
  if (auto fault = range_fault<Q>(value, field, parsed.value->si)) return fault;
  out = *parsed.value;
  return std::nullopt;
}

/// Code points of a UTF-8 text: bytes that do not go on with one.
std::size_t length_in_characters(std::string_view text) {
  const auto begins = [](char c) { return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u; };
  return static_cast<std::size_t>(std::ranges::count_if(text, begins));
}

std::optional<Fault> length_fault(std::string_view text, std::size_t most) {
  const std::size_t length = length_in_characters(text);
  if (length <= most) return std::nullopt;
  return Fault{fmt::format("{} is a text of {} characters", in_quotes(text), length),
               fmt::format("it may have {}", most)};
}

std::string choices_text(std::vector<std::string> choices) {
  for (std::string& choice : choices) choice = '"' + choice + '"';
  return listed(choices);
}

}  // namespace

std::optional<Fault> read_member(const SourceValue& value, const Field&, bool& out) {
  const auto* truth = std::get_if<bool>(&value.what);
  if (!truth) return not_a(value, "true or false", "write true or false without quotes");
  out = *truth;
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field& field, int& out) {
  double number = 0.0;
  if (auto fault = finite_number(value, "a whole number", number)) return fault;
  if (number != std::floor(number)) return not_a(value, "a whole number", "write it without decimals");
  if (auto fault = range_fault<double>(value, field, number)) return fault;
  if (std::abs(number) > std::numeric_limits<int>::max())
    return not_a(value, "a number of sensible size", "it may have up to nine digits");
  out = static_cast<int>(number);
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field& field, double& out) {
  double number = 0.0;
  if (auto fault = finite_number(value, "a number", number)) return fault;
  if (auto fault = range_fault<double>(value, field, number)) return fault;
  out = number;
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field& field, std::string& out) {
  const auto* text = std::get_if<std::string>(&value.what);
  if (!text) return not_a(value, "a text", "write it in quotes");
  const auto choices = split_choices(field.choices);
  if (!choices.empty() && std::ranges::find(choices, *text) == choices.end()) {
    const std::string meant = nearest(*text, choices);
    const std::string guess = meant.empty() ? "" : fmt::format("did you mean \"{}\"? ", meant);
    return Fault{in_quotes(*text) + " is not one of the choices",
                 guess + "it may be " + choices_text(choices)};
  }
  if (auto fault = length_fault(*text, field.key == "name" ? kLongestName : kLongestText)) return fault;
  out = *text;
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field&, Clock& out) {
  constexpr std::string_view kRemedy = "write an hour from 0 to 12, such as 9 or \"9:30\"";
  std::optional<Clock> clock;
  if (const auto* text = std::get_if<std::string>(&value.what)) clock = parse_clock(*text);
  if (const auto* number = std::get_if<SourceNumber>(&value.what))
    if (number->value >= 0.0 && number->value <= 12.0) clock = Clock{std::abs(number->value)};  // -0.0
  if (!clock) return not_a(value, "a clock position", std::string(kRemedy));
  out = *clock;
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field&, Colour& out) {
  const auto* text = std::get_if<std::string>(&value.what);
  if (!text || !parse_hex_colour(*text, out.linear))
    return not_a(value, "a colour", "write it as \"#rrggbb\", for example \"#c8a060\"");
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& value, const Field&, Names& out) {
  const auto* table = std::get_if<SourceTable>(&value.what);
  constexpr std::string_view kRemedy = "write it as { crust = \"rye crust\" }";
  if (!table) return not_a(value, "a table of names", std::string(kRemedy));
  if (table->entries.size() > kMostNames)
    return Fault{fmt::format("more than {} names", kMostNames), "is this a scene?"};
  Names names;
  for (const SourceEntry& entry : table->entries) {
    const auto* text = std::get_if<std::string>(&entry.value.what);
    if (!text) return Fault{fmt::format("'{}' is not given a text", tame(entry.key)), std::string(kRemedy)};
    for (const std::string& name : {entry.key, *text})
      if (auto fault = length_fault(name, kLongestName)) return fault;
    names.emplace(entry.key, *text);
  }
  out = std::move(names);
  return std::nullopt;
}

// One line per kind of quantity that descriptions hold.
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Length& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Angle& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Illuminance& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Luminance& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field&, Instant& out) {
  const auto* text = std::get_if<std::string>(&v.what);
  const auto instant = text ? parse_instant(*text) : std::nullopt;
  if (!instant)
    return not_a(v, "a possible date and time with its offset",
                 "write it as 2026-06-21T15:30:00+02:00: the offset from universal time, summer time "
                 "included, is what "
                 "says where the sun stands");
  out = *instant;
  return std::nullopt;
}

std::optional<Fault> read_member(const SourceValue& v, const Field& f, LuminousFlux& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, ColourTemperature& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, FNumber& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Duration& out) {
  return read_quantity(v, f, out);
}
std::optional<Fault> read_member(const SourceValue& v, const Field& f, Stops& out) {
  return read_quantity(v, f, out);
}

}  // namespace fillside
