// What may be moved or chosen: a key of the scene with the values it may take.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace fillside {

struct Freedom {
  std::string key;                   ///< "board.fill.distance"
  std::vector<std::string> choices;  ///< texts to choose from; empty: any value from least to most
  double least = 0.0, most = 0.0;    ///< in `unit`; hours of a clock
  std::string unit;                  ///< "cm"; empty for pure numbers and clocks
  bool clock = false;                ///< positions round the dish

  bool is_choice() const { return !choices.empty(); }
  /// The text of the value at that share of the way from least to most, 0..1, rounded to what a hand can set:
  /// a millimetre, a tenth of a degree, a minute of the clock, a thousandth of a number.
  std::string text_at(double share) const;
};

/// Whether the key's numbers are hours of a clock, so that a range may go past 12: "board.fill.faces".
bool is_clock_key(std::string_view key);

struct FreedomFault {
  std::string what, remedy;
};

/// Reads "board.fill.distance=15cm..80cm", "board.fill.clock=1..5" or "board.fill.sheet=A4,A3,A2".
std::variant<Freedom, FreedomFault> parse_freedom(std::string_view text);

}  // namespace fillside
