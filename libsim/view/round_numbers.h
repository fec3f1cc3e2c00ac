// Round numbers as people choose them, and how they are written on scales.
#pragma once

#include <string>

namespace fillside {

/// The largest of 1, 2, 5 times a power of ten that is not above `value` (> 0), and the smallest not below.
double one_two_five_below(double value);
double one_two_five_above(double value);

/// Stops to the nearest third with a proper minus: "−1⅓", "0", "2"; with `signed_text` "+2".
std::string stops_text(double stops, bool signed_text);
/// A number as short as its step allows: "0.25", "1200".
std::string number_text(double value, double step);

}  // namespace fillside
