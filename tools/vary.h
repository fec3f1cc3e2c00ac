// What is varied, in one word of the command: "board.fill.distance=15cm,20cm", "=10cm..90cm/9",
// "window.clock=6..12", "board.fill.sheet=A4,A3".
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "libsim/base/limits.h"
#include "libsim/what_if/series.h"

namespace fillside::tools {

/// A list of values, or a range: FROM..TO in whole steps of one, FROM..TO/N in N even steps, both ends
/// included; over a clock's twelve when the second end is the smaller one. Throws Misuse.
SeriesAxis parse_axis(const std::string& text);

/// The edit that sets a key to a value, as after --set.
std::string edit_of(const SeriesAxis& axis, std::size_t value);

/// "distance of board fill": the key in the order of speech; "board fill" where it is varied whether it is
/// there.
std::string axis_title(const SeriesAxis& axis);
/// One axis or two: "sheet and distance of board fill".
std::string axes_title(const std::vector<SeriesAxis>& axes);
/// "15cm", "9 o'clock", "without fill".
std::string value_name(const SeriesAxis& axis, std::size_t value);

}  // namespace fillside::tools
