// How far each number of a set may be off: what a tape, a square and a guess are good for. Usual figures, to
// be replaced where somebody knows better.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "libsim/scene/numeric_keys.h"

namespace fillside {

/// The scale that a number is varied on: itself, in SI units or hours of a clock; of levels and camera
/// settings the stops of light that they stand for.
double on_scale(const NumericKey& key, double value);
double off_scale(const NumericKey& key, double on_scale);

struct InputUncertainty {
  double amount;           ///< +- on that scale, about 95 %
  std::string_view basis;  ///< where it comes from: "by tape", "catalogue"
};

/// Nothing for numbers that are no matter of measuring: places on earth, how a clear pane is described when
/// its transmittance is said. `as_written` is the set before spelt_out: what it left out or named is as
/// uncertain as the catalogue says.
std::optional<InputUncertainty> usual_uncertainty(const Description& as_written, const NumericKey& key);

/// Reads how far a key may be off: a length, an angle (of clocks too), a number, or stops (of levels).
/// Nothing, and an example of what to write, for other texts.
std::optional<double> parse_uncertainty(const NumericKey& key, std::string_view text, std::string& example);

/// What changes are told per: so much on the scale, by that name: "cm", "mm", "deg", "0.1", "stop", "100 K".
struct SlopeUnit {
  double size;
  std::string_view text;
};
SlopeUnit slope_unit(const NumericKey& key);

/// "18 cm", "9:30", "0.85", "12 klx": the value as one would write it.
std::string value_text(const NumericKey& key);
/// "1 cm", "5 deg", "0.05", "1 stop".
std::string amount_text(const NumericKey& key, double amount);

}  // namespace fillside
