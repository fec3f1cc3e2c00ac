// What a lesson's pages say of one value and its figures.
#pragma once

#include <string>
#include <vector>

#include "libsim/what_if/series.h"

namespace fillside::tools {

/// "lit:shadow 3.1 : 1, 1.63 stops"; of light the stops from the first value: "key 812 lx, -1.0 stop".
std::string burned_in(const Series& series, std::size_t point, std::size_t figure);

/// "lit:shadow of the subject, ratio".
std::string figure_heading(const SeriesFigure& figure);

/// "A", "B", ...
std::string letter(std::size_t place);

/// The text's paragraphs: a line break ends one.
std::vector<std::string> paragraphs_of(const std::string& text);

}  // namespace fillside::tools
