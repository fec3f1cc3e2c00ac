// What a set shall read: a figure between bounds, in the trade's words.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "libsim/base/estimate.h"

namespace fillside {

struct Want {
  std::string text;                   ///< as wished for: "lit:shadow = 3:1"
  std::string figure;                 ///< one of figure_names.h
  std::optional<double> least, most;  ///< in the figure's unit
  std::optional<double> exact;        ///< instead of bounds
  double tolerance_stops = 0.1;       ///< of `exact`
};

/// What is wrong with a wish, and how it is written.
struct WantFault {
  std::string what, remedy;
};

/// Reads "FIGURE = VALUE", "FIGURE = VALUE within 0.1 stop", "FIGURE >= VALUE" or "FIGURE <= VALUE" ("at
/// least", "at most"). A value is a number, "3:1" or "1/3", and may name its unit. Figures are those of
/// claims; "lit:shadow" stands for subject.lit_to_shadow, "key:fill" for meter.dish up.key_to_fill, "falloff"
/// for dish.falloff, "sun on the dish" for dish.sunlit.
std::variant<Want, WantFault> parse_want(std::string_view text);

/// By how much a figure keeps within the want, in stops; negative: by how much it misses. Figures that are no
/// stops (ratios, lx, mm) count by their logarithm; shares in % count ten points for a stop, since they may
/// be nothing at all. Not a number where the figure is none.
Estimate slack_stops(const Want& want, const Estimate& figure, std::string_view unit);

}  // namespace fillside
