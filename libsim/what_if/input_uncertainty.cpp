#include "libsim/what_if/input_uncertainty.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "libsim/base/clock.h"
#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

constexpr double kDegreesAnHour = 30.0;

/// One rule: the first that fits counts. Amounts in SI, hours, or stops; all common practice.
struct Rule {
  std::string_view section, key;  ///< empty: any
  double amount, share;           ///< the larger of the amount and that share of the value
  std::string_view basis;
};
constexpr std::array kLengths{Rule{"board", "thickness", 0.001, 0.0, "by ruler"},
                              Rule{"window", "bar_width", 0.001, 0.0, "by ruler"},
                              Rule{"", "relief", 0.001, 0.0, "by eye"},
                              Rule{"", "picture_width", 0.01, 0.02, "by tape"},
                              Rule{"daylight", "", 1.0, 0.1, "by eye"},
                              Rule{"board", "foot_gap", 0.005, 0.0, "by ruler"},
                              Rule{"diffuser", "foot_gap", 0.005, 0.0, "by ruler"},
                              Rule{"food", "width", 0.005, 0.02, "by ruler"},
                              Rule{"food", "height", 0.005, 0.02, "by ruler"},
                              Rule{"food", "depth", 0.005, 0.02, "by ruler"},
                              Rule{"prop", "width", 0.005, 0.02, "by ruler"},
                              Rule{"prop", "height", 0.005, 0.02, "by ruler"},
                              Rule{"prop", "depth", 0.005, 0.02, "by ruler"},
                              Rule{"", "", 0.01, 0.02, "by tape"}};

constexpr double kDegree_rad = 3.14159265358979323846 / 180.0;
constexpr std::array kAngles{Rule{"", "sun_altitude", 1.0 * kDegree_rad, 0.0, "from a table"},
                             Rule{"", "sun_off_window", 3.0 * kDegree_rad, 0.0, "by compass"},
                             Rule{"", "turn", 5.0 * kDegree_rad, 0.0, "by eye"},
                             Rule{"", "fold", 5.0 * kDegree_rad, 0.0, "by eye"},
                             Rule{"", "", 3.0 * kDegree_rad, 0.0, "by eye"}};

constexpr std::array kShares{Rule{"room", "", 0.10, 0.0, "guessed"},
                             Rule{"daylight", "", 0.10, 0.0, "guessed"},
                             Rule{"window", "reveal_reflectance", 0.10, 0.0, "guessed"},
                             Rule{"window", "cover_reflectance", 0.05, 0.0, "guessed"},
                             Rule{"window", "bar_reflectance", 0.10, 0.0, "guessed"},
                             Rule{"window", "folds", 0.2, 0.0, "by eye"},
                             Rule{"lamp", "reflectance", 0.10, 0.0, "guessed"},
                             Rule{"board", "specular_share", 0.10, 0.0, "guessed"},
                             Rule{"board", "roughness", 0.10, 0.0, "guessed"},
                             Rule{"mesh", "scale", 0.0, 0.02, "by tape"},
                             Rule{"anchor", "reflectance", 0.01, 0.0, "as its maker says"},
                             Rule{"", "", 0.05, 0.0, "by eye"}};

constexpr std::array kLights{
    Rule{"daylight", "sun_illuminance", 1.0 / 3.0, 0.0, "usual figure"},
    Rule{"daylight", "", 1.0, 0.0, "the weather's"}, Rule{"lamp", "", 0.15, 0.0, "as its maker says"},
    Rule{"anchor", "", 0.15, 0.0, "a plain lux meter's"}, Rule{"", "", 0.15, 0.0, "guessed"}};

template <std::size_t N>
InputUncertainty by_rule(const std::array<Rule, N>& rules, const NumericKey& key) {
  const auto rule = std::ranges::find_if(rules, [&](const Rule& r) {
    return (r.section.empty() || r.section == key.section) && (r.key.empty() || r.key == key.key);
  });
  return {std::max(rule->amount, rule->share * std::abs(key.value)), rule->basis};
}

bool is_said(const Description& as_written, const NumericKey& key) {
  const std::vector<NumericKey> said = numeric_keys(as_written);
  return std::ranges::find(said, key.path, &NumericKey::path) != said.end();
}

/// What the set left out comes from the catalogue, and with it how far it may be off.
std::optional<InputUncertainty> by_catalogue(const Description& as_written, const NumericKey& key) {
  if (key.key.ends_with("reflectance"))
    if (const auto* surface = surface_named(text_beside(as_written, key, "surface")))
      return InputUncertainty{surface->uncertainty, "catalogue"};
  for (const char* cloth : {"curtain", "cloth"})
    if (const auto* known = cloth_named(text_beside(as_written, key, cloth))) {
      const bool is_share = key.key.find("direct") != std::string_view::npos ||
                            key.key.find("diffuse") != std::string_view::npos ||
                            key.key.ends_with("reflectance");
      if (is_share) return InputUncertainty{known->uncertainty, "catalogue"};
    }
  if ((key.key == "width" || key.key == "height") && !text_beside(as_written, key, "sheet").empty())
    return InputUncertainty{0.002, "as cut"};
  return std::nullopt;
}

std::optional<InputUncertainty> by_measure(const NumericKey& key) {
  constexpr double kSettings_stops = 1.0 / 6.0;  // dials go in thirds
  switch (key.measure) {
    case Measure::length:
      return by_rule(kLengths, key);
    case Measure::angle:
      return by_rule(kAngles, key);
    case Measure::clock:
      return InputUncertainty{5.0 / kDegreesAnHour, "by eye"};
    case Measure::share:
      return by_rule(kShares, key);
    case Measure::light:
      return by_rule(kLights, key);
    case Measure::temperature:
      return InputUncertainty{100.0, "as its maker says"};
    case Measure::f_number:
    case Measure::duration:
      return InputUncertainty{kSettings_stops, "dials go in thirds"};
    case Measure::stops:
      break;
  }
  return std::nullopt;
}

template <class Q>
std::optional<double> amount_of(std::string_view text, std::string& example) {
  const Parsed<Q> parsed = parse_quantity<Q>(text);
  if (parsed.value && parsed.value->si > 0.0) return parsed.value->si;
  example = example_of<Q>();
  return std::nullopt;
}

std::optional<double> plain_amount(std::string_view text, std::string& example) {
  double number = 0.0;
  const auto [rest, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (fault == std::errc{} && rest == text.data() + text.size() && number > 0.0 && std::isfinite(number))
    return number;
  example = "0.05";
  return std::nullopt;
}

std::string light_text(const NumericKey& key, double value) {
  const bool by_thousands = value >= 1000.0;
  const std::string_view unit = key.key.ends_with("illuminance") || key.key == "outdoor" || key.key == "lux"
                                    ? "lx"
                                : key.key == "lumens" ? "lm"
                                                      : "cd/m2";
  return fmt::format("{:.4g} {}{}", by_thousands ? 1e-3 * value : value, by_thousands ? "k" : "", unit);
}

/// A cover, reveal or curtain that is not there has no measure that could be off; nor has the height angle of
/// what faces by a word.
bool is_of_nothing(const Description& as_written, const NumericKey& key) {
  const bool faces = key.section == "meter" || key.section == "lamp";
  if (faces && key.key == "elevation") return text_beside(as_written, key, "faces") != "clock";
  if (key.section != "window") return false;
  if (key.key == "folds") return text_beside(as_written, key, "curtain").empty();
  return (key.key.starts_with("cover_") || key.key == "reveal") && key.value == 0.0;
}

bool goes_by_millimetres(const NumericKey& key) {
  return key.measure == Measure::length &&
         (key.key == "thickness" || key.key == "bar_width" || key.key == "relief");
}

}  // namespace

double on_scale(const NumericKey& key, double value) {
  if (key.measure == Measure::light || key.measure == Measure::duration) return std::log2(value);
  return key.measure == Measure::f_number ? 2.0 * std::log2(value) : value;
}

double off_scale(const NumericKey& key, double on_scale) {
  if (key.measure == Measure::light || key.measure == Measure::duration) return std::exp2(on_scale);
  return key.measure == Measure::f_number ? std::exp2(0.5 * on_scale) : on_scale;
}

std::optional<InputUncertainty> usual_uncertainty(const Description& as_written, const NumericKey& key) {
  if (key.key == "latitude" || key.key == "longitude" || key.key == "glass_absorption") return std::nullopt;
  if (is_of_nothing(as_written, key)) return std::nullopt;
  if (!is_said(as_written, key))
    if (const auto known = by_catalogue(as_written, key)) return known;
  return by_measure(key);
}

std::optional<double> parse_uncertainty(const NumericKey& key, std::string_view text, std::string& example) {
  switch (key.measure) {
    case Measure::length:
      return amount_of<Length>(text, example);
    case Measure::angle:
      return amount_of<Angle>(text, example);
    case Measure::clock: {
      const auto angle_rad = amount_of<Angle>(text, example);
      return angle_rad ? std::optional(*angle_rad / kDegree_rad / kDegreesAnHour) : std::nullopt;
    }
    case Measure::share:
      return plain_amount(text, example);
    case Measure::temperature:
      return amount_of<ColourTemperature>(text, example);
    default:
      return amount_of<Stops>(text, example);
  }
}

SlopeUnit slope_unit(const NumericKey& key) {
  switch (key.measure) {
    case Measure::length:
      if (key.section == "daylight") return {1.0, "m"};
      return goes_by_millimetres(key) ? SlopeUnit{0.001, "mm"} : SlopeUnit{0.01, "cm"};
    case Measure::angle:
      return {kDegree_rad, "deg"};
    case Measure::clock:
      return {1.0 / kDegreesAnHour, "deg"};
    case Measure::share:
      return {0.1, "0.1"};
    case Measure::temperature:
      return {100.0, "100 K"};
    default:
      return {1.0, "stop"};
  }
}

std::string value_text(const NumericKey& key) {
  const double v = key.value;
  switch (key.measure) {
    case Measure::length:
      if (goes_by_millimetres(key) || std::abs(v) < 0.01) return fmt::format("{:.3g} mm", 1e3 * v);
      return std::abs(v) < 10.0 ? fmt::format("{:.4g} cm", 1e2 * v) : fmt::format("{:.4g} m", v);
    case Measure::angle:
      return fmt::format("{:.3g} deg", v / kDegree_rad);
    case Measure::clock:
      return to_text(Clock{v});
    case Measure::share:
      return fmt::format("{:.3g}", v);
    case Measure::light:
      return light_text(key, v);
    case Measure::temperature:
      return fmt::format("{:.4g} K", v);
    case Measure::f_number:
      return fmt::format("f/{:.2g}", v);
    case Measure::duration:
      return v < 0.5 ? fmt::format("1/{:.3g} s", 1.0 / v) : fmt::format("{:.3g} s", v);
    case Measure::stops:
      break;
  }
  return fmt::format("{:.3g}", v);
}

std::string amount_text(const NumericKey& key, double amount) {
  switch (key.measure) {
    case Measure::length:
      if (key.section == "daylight") return fmt::format("{:.3g} m", amount);
      return amount < 0.0099 ? fmt::format("{:.3g} mm", 1e3 * amount)
                             : fmt::format("{:.3g} cm", 1e2 * amount);
    case Measure::angle:
      return fmt::format("{:.3g} deg", amount / kDegree_rad);
    case Measure::clock:
      return fmt::format("{:.3g} deg", amount * kDegreesAnHour);
    case Measure::share:
      return fmt::format("{:.2g}", amount);
    case Measure::temperature:
      return fmt::format("{:.3g} K", amount);
    default:
      return fmt::format("{:.2g} stop", amount);
  }
}

}  // namespace fillside
