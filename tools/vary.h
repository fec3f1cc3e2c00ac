// What is varied, in one word of the command: "board.fill.distance=15cm,20cm", "=10cm..90cm/9",
// "window.clock=6..12", "board.fill.sheet=A4,A3".
#pragma once

#include <cstddef>
#include <string>

#include "libsim/what_if/series.h"

namespace fillside::tools {

/// So many sets a series may have.
inline constexpr std::size_t kMostSeriesSets = 10000;

/// A list of values, or a range: FROM..TO in whole steps of one, FROM..TO/N in N even steps, both ends
/// included; over a clock's twelve when the second end is the smaller one. Throws Misuse.
SeriesAxis parse_axis(const std::string& text);

/// The edit that sets a key to a value, as after --set.
std::string edit_of(const SeriesAxis& axis, std::size_t value);

/// "distance of board fill (cm)": the key in the order of speech.
std::string axis_title(const SeriesAxis& axis);

}  // namespace fillside::tools
