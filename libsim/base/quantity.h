// Strong quantities for the borders of the library: descriptions, arguments and results. Inside, bare numbers
// carry their unit in the name. A Quantity holds SI (or the photometric unit) in `si`.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace fillside {

template <class Dimension>
struct Quantity {
  double si = 0.0;

  friend constexpr auto operator<=>(Quantity, Quantity) = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return {a.si + b.si}; }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return {a.si - b.si}; }
  friend constexpr Quantity operator-(Quantity a) { return {-a.si}; }
  friend constexpr Quantity operator*(double k, Quantity a) { return {k * a.si}; }
  friend constexpr Quantity operator/(Quantity a, double k) { return {a.si / k}; }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.si / b.si; }
};

struct LengthDimension;
struct AngleDimension;
struct IlluminanceDimension;
struct LuminanceDimension;
struct LuminousFluxDimension;
struct ColourTemperatureDimension;
struct DurationDimension;
struct FNumberDimension;
struct StopsDimension;

using Length = Quantity<LengthDimension>;            ///< m; texts: "60 cm", "24 in", "1/8 in", "2 ft", "5 mm"
using Angle = Quantity<AngleDimension>;              ///< rad; texts: "10 deg"
using Illuminance = Quantity<IlluminanceDimension>;  ///< lx; texts: "800 lx", "12 klx"
using Luminance = Quantity<LuminanceDimension>;      ///< cd/m2; texts: "2000 cd/m2", "2 kcd/m2"
using LuminousFlux = Quantity<LuminousFluxDimension>;            ///< lm; texts: "800 lm", "1.5 klm"
using ColourTemperature = Quantity<ColourTemperatureDimension>;  ///< K; texts: "2700 K"
using Duration = Quantity<DurationDimension>;                    ///< s; texts: "1/60 s", "5 ms", "2 min"
using FNumber = Quantity<FNumberDimension>;  ///< focal length / entrance pupil; texts: "f/5.6"
using Stops = Quantity<StopsDimension>;      ///< log2 ratio; texts: "0.05 stop", "1/3 stop", "2 stops"

constexpr Length metres(double value) { return {value}; }
constexpr Length centimetres(double value) { return {value * 1e-2}; }
constexpr Length millimetres(double value) { return {value * 1e-3}; }
constexpr Angle radians(double value) { return {value}; }
constexpr Angle degrees(double value) { return {value * (3.14159265358979323846 / 180.0)}; }
constexpr Illuminance lux(double value) { return {value}; }
constexpr Luminance candela_per_m2(double value) { return {value}; }
constexpr LuminousFlux lumens(double value) { return {value}; }
constexpr ColourTemperature kelvin(double value) { return {value}; }
constexpr Duration seconds(double value) { return {value}; }
constexpr FNumber f_number(double value) { return {value}; }
constexpr Stops stops(double value) { return {value}; }

constexpr double in_degrees(Angle angle) { return angle.si * (180.0 / 3.14159265358979323846); }

/// What reading a text as a quantity gave: a value, or what is wrong with the text and what to write instead.
template <class Q>
struct Parsed {
  std::optional<Q> value;
  std::string fault;   ///< empty when there is a value
  std::string remedy;  ///< for example: write it as "60 cm"
};

/// Reads "60 cm" and the like: a number, a fraction "1/8" or a mixed number "1 1/2", then a unit of the right
/// kind. A bare number, another kind's unit, infinities and NaN are refused with a remedy.
template <class Q>
Parsed<Q> parse_quantity(std::string_view text);

/// The canonical text of a quantity, which parse_quantity reads back to the same value.
template <class Q>
std::string to_text(Q quantity);

/// "a length", "an angle": for messages.
template <class Q>
std::string_view kind_of();
/// An example of the kind's text: "60 cm".
template <class Q>
std::string_view example_of();

}  // namespace fillside
