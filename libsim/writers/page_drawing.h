// Small pieces of SVG for the page: drawn with the page's own ink and letters, so that they follow its light
// and dark, and print sharp. No inline style: the page's policy forbids it.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/view/map.h"

namespace fillside {

/// "#rrggbb" of a linear colour.
std::string hex_of(const Rgb& linear);

/// A number with at most two decimals and no needless zeros.
std::string coordinate(double value);

/// "M1 2L3 4Z" of spots.
std::string path_data(const std::vector<std::array<double, 2>>& spots, bool closed);

/// "dish", "board", ...: the class of a thing's outline.
std::string_view class_of(MapOutline::Kind kind);

}  // namespace fillside
