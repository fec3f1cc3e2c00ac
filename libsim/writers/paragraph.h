// Texts of several lines, broken where the sheet ends.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/writers/drawing.h"

namespace fillside {

/// The text in lines no wider than `width_px`, broken at spaces; a word that is wider alone stays whole.
std::vector<std::string> lines_of(const Drawing& drawing, std::string_view text, const Lettering& lettering,
                                  double width_px);

/// The text cut off with an ellipsis so that it is no wider than `width_px`.
std::string shortened(const Drawing& drawing, std::string_view text, const Lettering& lettering,
                      double width_px);

/// Distance between the baselines of such lettering.
inline double leading_px(const Lettering& lettering) { return 1.42 * lettering.size_px; }

/// Writes lines under each other, the first one's top at `y_px`; returns where the next paragraph's top may
/// stand.
double write_lines(Drawing& drawing, const std::vector<std::string>& lines, double x_px, double y_px,
                   const Lettering& lettering);

}  // namespace fillside
