#include "libsim/base/quantity.h"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <span>

#include "libsim/base/unit_symbols.h"

namespace fillside {
namespace {

struct Unit {
  std::string_view symbol;
  double to_si;
  bool prefix = false;  ///< written before the number, as in f/8
};

/// Everything the parser and the writer know of one kind; the first unit is the one written.
struct Kind {
  std::string_view name, example;
  std::span<const Unit> units;
};

constexpr std::array kLengths{Unit{"cm", 1e-2},   Unit{"mm", 1e-3},     Unit{"m", 1.0},
                              Unit{"in", 0.0254}, Unit{"inch", 0.0254}, Unit{"\"", 0.0254},
                              Unit{"ft", 0.3048}, Unit{"km", 1e3}};
constexpr std::array kAngles{Unit{"deg", 3.14159265358979323846 / 180.0},
                             Unit{"°", 3.14159265358979323846 / 180.0}, Unit{"rad", 1.0}};
constexpr std::array kIlluminances{Unit{"lx", 1.0}, Unit{"lux", 1.0}, Unit{"klx", 1e3}};
constexpr std::array kLuminances{Unit{"cd/m2", 1.0}, Unit{"cd/m²", 1.0}, Unit{"kcd/m2", 1e3}};
constexpr std::array kFluxes{Unit{"lm", 1.0}, Unit{"klm", 1e3}};
constexpr std::array kTemperatures{Unit{"K", 1.0}, Unit{"kK", 1e3}};
constexpr std::array kDurations{Unit{"s", 1.0}, Unit{"ms", 1e-3}, Unit{"min", 60.0}};
constexpr std::array kFNumbers{Unit{"f/", 1.0, true}};
constexpr std::array kStops{Unit{"stop", 1.0}, Unit{"stops", 1.0}};

template <class Q>
constexpr Kind kind();
template <>
constexpr Kind kind<Length>() {
  return {"a length", "60 cm", kLengths};
}
template <>
constexpr Kind kind<Angle>() {
  return {"an angle", "10 deg", kAngles};
}
template <>
constexpr Kind kind<Illuminance>() {
  return {"an illuminance", "12 klx", kIlluminances};
}
template <>
constexpr Kind kind<Luminance>() {
  return {"a luminance", "2000 cd/m2", kLuminances};
}
template <>
constexpr Kind kind<LuminousFlux>() {
  return {"a luminous flux", "800 lm", kFluxes};
}
template <>
constexpr Kind kind<ColourTemperature>() {
  return {"a colour temperature", "2700 K", kTemperatures};
}
template <>
constexpr Kind kind<Duration>() {
  return {"a time", "1/60 s", kDurations};
}
template <>
constexpr Kind kind<FNumber>() {
  return {"an f-number", "f/5.6", kFNumbers};
}
template <>
constexpr Kind kind<Stops>() {
  return {"a number of stops", "0.05 stop", kStops};
}

constexpr std::array kAllKinds{kind<LuminousFlux>(), kind<ColourTemperature>(), kind<Length>(),
                               kind<Angle>(),        kind<Illuminance>(),       kind<Luminance>(),
                               kind<Duration>(),     kind<FNumber>(),           kind<Stops>()};

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

/// Takes a decimal number off the front of the text. from_chars keeps the reader free of the locale.
std::optional<double> take_decimal(std::string_view& text) {
  double value = 0.0;
  const char* first = text.data();
  if (text.starts_with('+') && !text.starts_with("+-")) ++first;
  const auto [end, fault] = std::from_chars(first, text.data() + text.size(), value);
  if (fault != std::errc{} || !std::isfinite(value)) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return value;
}

/// Only the front of a text may bear a sign.
std::optional<double> take_unsigned(std::string_view& text) {
  if (text.starts_with('+') || text.starts_with('-')) return std::nullopt;
  return take_decimal(text);
}

/// The "/8" of "1/8", as its 8.
std::optional<double> take_denominator(std::string_view& text) {
  text.remove_prefix(1);
  const auto below = take_unsigned(text);
  return below && *below > 0.0 ? below : std::nullopt;
}

/// "3", "2.5", "1/8" or "1 1/2".
std::optional<double> take_number(std::string_view& text) {
  const auto whole = take_decimal(text);
  if (!whole) return std::nullopt;
  if (text.starts_with('/')) {
    const auto below = take_denominator(text);
    return below ? std::optional(*whole / *below) : std::nullopt;
  }
  auto rest = trimmed(text);
  if (const auto part = take_unsigned(rest); part && rest.starts_with('/')) {
    const auto below = take_denominator(rest);
    if (!below) return std::nullopt;
    text = rest;
    return *whole + std::copysign(*part / *below, *whole);
  }
  return whole;
}

const Unit* unit_named(const Kind& kind, std::string_view symbol) {
  for (const Unit& unit : kind.units)
    if (unit.symbol == symbol) return &unit;
  return nullptr;
}

std::string write_it_as(const Kind& kind) { return fmt::format("write it as \"{}\"", kind.example); }

/// Why the unit does not fit: missing, of another kind, or unknown.
std::string unit_fault(const Kind& wanted, std::string_view text, std::string_view symbol) {
  if (symbol.empty()) return fmt::format("\"{}\" has no unit", text);
  for (const Kind& other : kAllKinds)
    if (other.name != wanted.name && unit_named(other, symbol))
      return fmt::format("\"{}\" is {}, not {}", text, other.name, wanted.name);
  return fmt::format("\"{}\" is not a unit of {}", symbol, wanted.name);
}

template <class Q>
Parsed<Q> parse(std::string_view text) {
  const Kind wanted = kind<Q>();
  std::string_view rest = trimmed(text);
  const Unit* unit = nullptr;
  for (const Unit& candidate : wanted.units)
    if (candidate.prefix && rest.starts_with(candidate.symbol)) {
      unit = &candidate;
      rest.remove_prefix(candidate.symbol.size());
    }
  if (rest.starts_with("f/"))
    return {{}, fmt::format("\"{}\" is an f-number, not {}", text, wanted.name), write_it_as(wanted)};
  const auto number = take_number(rest);
  if (!number) return {{}, fmt::format("\"{}\" is not {}", text, wanted.name), write_it_as(wanted)};
  const std::string_view symbol = trimmed(rest);
  if (!unit || !symbol.empty()) unit = unit ? nullptr : unit_named(wanted, symbol);
  if (!unit || (unit->prefix && !symbol.empty()))
    return {{}, unit_fault(wanted, text, symbol), write_it_as(wanted)};
  const double si = *number * unit->to_si + 0.0;  // no negative zero
  if (!std::isfinite(si)) return {{}, fmt::format("\"{}\" is out of range", text), write_it_as(wanted)};
  return {Q{si}, {}, {}};
}

/// Shortest text that reads back to the same double. Not every double is some number of centimetres, once
/// both are rounded: then the kind's other units are tried, and each kind has one that is SI itself.
template <class Q>
std::string write(Q quantity) {
  std::string text;
  for (const Unit& unit : kind<Q>().units)
    for (int digits = 6; digits <= 17; ++digits) {
      const std::string number = fmt::format("{:.{}g}", quantity.si / unit.to_si, digits);
      text =
          unit.prefix ? fmt::format("{}{}", unit.symbol, number) : fmt::format("{} {}", number, unit.symbol);
      if (const auto back = parse<Q>(text); back.value && back.value->si == quantity.si) return text;
    }
  return text;  // not a number, or infinite
}

}  // namespace

template <class Q>
Parsed<Q> parse_quantity(std::string_view text) {
  return parse<Q>(text);
}
template <class Q>
std::string to_text(Q quantity) {
  return write(quantity);
}
template <class Q>
std::string_view kind_of() {
  return kind<Q>().name;
}
template <class Q>
std::string_view example_of() {
  return kind<Q>().example;
}
template <class Q>
std::vector<std::string_view> unit_symbols() {
  std::vector<std::string_view> symbols;
  for (const Unit& unit : kind<Q>().units) symbols.push_back(unit.symbol);
  return symbols;
}
template <class Q>
bool unit_stands_first() {
  return kind<Q>().units.front().prefix;
}

// One line per kind of quantity that descriptions may hold.
template Parsed<Length> parse_quantity<Length>(std::string_view);
template Parsed<Angle> parse_quantity<Angle>(std::string_view);
template Parsed<Illuminance> parse_quantity<Illuminance>(std::string_view);
template Parsed<Luminance> parse_quantity<Luminance>(std::string_view);
template Parsed<LuminousFlux> parse_quantity<LuminousFlux>(std::string_view);
template Parsed<ColourTemperature> parse_quantity<ColourTemperature>(std::string_view);
template Parsed<Duration> parse_quantity<Duration>(std::string_view);
template Parsed<FNumber> parse_quantity<FNumber>(std::string_view);
template Parsed<Stops> parse_quantity<Stops>(std::string_view);
template std::string to_text<Length>(Length);
template std::string to_text<Angle>(Angle);
template std::string to_text<Illuminance>(Illuminance);
template std::string to_text<Luminance>(Luminance);
template std::string to_text<LuminousFlux>(LuminousFlux);
template std::string to_text<ColourTemperature>(ColourTemperature);
template std::string to_text<Duration>(Duration);
template std::string to_text<FNumber>(FNumber);
template std::string to_text<Stops>(Stops);
template std::string_view kind_of<Length>();
template std::string_view kind_of<Angle>();
template std::string_view kind_of<Illuminance>();
template std::string_view kind_of<Luminance>();
template std::string_view kind_of<LuminousFlux>();
template std::string_view kind_of<ColourTemperature>();
template std::string_view kind_of<Duration>();
template std::string_view kind_of<FNumber>();
template std::string_view kind_of<Stops>();
template std::string_view example_of<Length>();
template std::string_view example_of<Angle>();
template std::string_view example_of<Illuminance>();
template std::string_view example_of<Luminance>();
template std::string_view example_of<LuminousFlux>();
template std::string_view example_of<ColourTemperature>();
template std::string_view example_of<Duration>();
template std::string_view example_of<FNumber>();
template std::string_view example_of<Stops>();
template std::vector<std::string_view> unit_symbols<Length>();
template bool unit_stands_first<Length>();
template std::vector<std::string_view> unit_symbols<Angle>();
template bool unit_stands_first<Angle>();
template std::vector<std::string_view> unit_symbols<Illuminance>();
template bool unit_stands_first<Illuminance>();
template std::vector<std::string_view> unit_symbols<Luminance>();
template bool unit_stands_first<Luminance>();
template std::vector<std::string_view> unit_symbols<LuminousFlux>();
template bool unit_stands_first<LuminousFlux>();
template std::vector<std::string_view> unit_symbols<ColourTemperature>();
template bool unit_stands_first<ColourTemperature>();
template std::vector<std::string_view> unit_symbols<Duration>();
template bool unit_stands_first<Duration>();
template std::vector<std::string_view> unit_symbols<FNumber>();
template bool unit_stands_first<FNumber>();
template std::vector<std::string_view> unit_symbols<Stops>();
template bool unit_stands_first<Stops>();

}  // namespace fillside
