// Rules that a formula decides, and those that light does not.
#include <cmath>

#include "libsim/base/space.h"
#include "libsim/light/availability.h"
#include "libsim/matter/clear_pane.h"
#include "tools/rule_book.h"

namespace fillside::tools {
namespace {

RuleTrials half_a_stop(const RuleBench&) {
  return {{"half a stop less: light lost", 100.0 * (1.0 - std::exp2(-0.5)), "%", 24.0, 26.0}};
}

RuleTrials ratios_in_stops(const RuleBench&) {
  return {{"3 : 1, said to be 1.5", std::log2(3.0), "stops", 1.4, 1.6},
          {"5 : 1, said to be 2.5", std::log2(5.0), "stops", 2.4, 2.6}};
}

/// Key and fill on the lit side, fill alone on the other.
RuleTrials key_over_fill(const RuleBench&) {
  const double key = std::exp2(1.0);
  return {{"(key + fill) : fill, key a stop over fill", key + 1.0, ": 1", 2.99, 3.01}};
}

/// Incident light to exposure value: 2^EV = E S / C with C = 250 at ISO 100, ISO 2720:1974.
double exposure_value(double lx) { return std::log2(lx * 100.0 / 250.0); }

RuleTrials sunny_sixteen(const RuleBench&) {
  constexpr int kEquinox = 80;
  const Angle high = degrees(45.0);
  const double sun_lx = direct_normal_illuminance(Weather::clear, high, kEquinox)->si +
                        diffuse_horizontal_illuminance(Weather::clear, high)->si,
               grey_lx = diffuse_horizontal_illuminance(Weather::overcast, high)->si;
  const double f16 = std::log2(16.0 * 16.0 * 100.0);  // f/16 at 1/100 s
  return {{"clear sky, sun 45 deg high: exposure value over f/16 at 1/100 s", exposure_value(sun_lx) - f16,
           "stops", -0.5, 0.5},
          {"usual overcast at that hour under it", exposure_value(sun_lx) - exposure_value(grey_lx), "stops",
           2.5, 3.5}};
}

/// Clear glass square on, by Fresnel's equations (matter/clear_pane.h).
RuleTrials panes(const RuleBench&) {
  const auto passes = [](int count) {
    return 100.0 * pane_shares({.absorption = 0.02, .panes = count}, 1.0).transmitted;
  };
  return {{"two clear panes pass, said to be 80", passes(2), "%", 75.0, 85.0},
          {"three clear panes pass, said to be 70", passes(3), "%", 65.0, 75.0}};
}

/// Hands move at about half a metre a second, poured liquid at one (from memory); a millimetre shows.
RuleTrials frozen(const RuleBench&) {
  return {{"a hand at 0.5 m/s, 1/60 s: smear on the food", 500.0 / 60.0, "mm", 0.0, 1.0},
          {"poured liquid at 1 m/s, 1/60 s: smear", 1000.0 / 60.0, "mm", 0.0, 1.0}};
}

/// Drops thrown up fly at two or three metres a second (from memory).
RuleTrials splash(const RuleBench&) {
  return {{"drops at 2.5 m/s, 1/1000 s: smear", 2500.0 / 1000.0, "mm", 0.0, 1.0},
          {"drops at 2.5 m/s, 1/8000 s: smear", 2500.0 / 8000.0, "mm", 0.0, 1.0}};
}

/// Share of what a square of even luminance L sends, pi L at most, that a receptor gets which faces its
/// middle. Howell, "A Catalog of Radiation Heat Transfer Configuration Factors", section B: rectangle
/// parallel to a small plane, four corners of it.
double from_square_card(double side_m, double distance_m) {
  const double x = 0.5 * side_m / distance_m, root = std::sqrt(1.0 + x * x);
  return 4.0 * (2.0 * x / root * std::atan(x / root)) / (2.0 * kPi);
}

/// Sixteen parts of light in the sun, one of them from the sky, which is all that the shade has. The card,
/// 0.85 white, stands half turned from the sun (cosine 0.7) and faces the shade.
RuleTrials card_in_open_sun(const RuleBench&) {
  const auto gap_stops = [](double distance_m) {
    const double from_card = 0.85 * (15.0 * 0.7 + 1.0) * from_square_card(0.6, distance_m);
    return std::log2(16.0 / (1.0 + from_card));
  };
  return {{"60 cm off, four stops become", gap_stops(0.6), "stops", 1.5, 2.5},
          {"40 cm off, said to be one", gap_stops(0.4), "stops", 0.5, 1.5}};
}

}  // namespace

std::vector<Rule> rules_by_arithmetic() {
  return {{10, "Half a stop is a quarter less light", "25 %, within one", half_a_stop},
          {16, "A white card of 60 cm halves a sun-and-shade gap of four stops",
           "two stops, and one from half as near again, within half a stop", card_in_open_sun},
          {23, "3:1 is a stop and a half, 5:1 two and a half", "within a tenth of a stop", ratios_in_stops},
          {24, "Key a stop over fill reads 3:1", "3 : 1", key_over_fill},
          {29, "f/16 in sun, three stops more under an overcast sky", "within half a stop", sunny_sixteen},
          {31, "Double glazing passes 80 %, triple 70 %", "within five hundredths", panes},
          {34, "1/60 s freezes a hand or a liquid", "a smear of a millimetre at most", frozen},
          {35, "A splash wants 1/1000 s, better 1/8000 s", "a smear of a millimetre at most", splash}};
}

std::vector<Rule> rules_light_does_not_decide() {
  return {{22, "2:1 is airy, 3:1 usual, 4:1 dramatic, 8:1 moody", "words for a taste"},
          {26, "Raking light suits fine texture and clutters coarse", "a taste"},
          {33, "Hand-hold no slower than one over the focal length, or 1/60 s", "a matter of hands"},
          {36, "Wisps of steam want a slow shutter, or a fast one", "a matter of how steam moves"}};
}

}  // namespace fillside::tools
