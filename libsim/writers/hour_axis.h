// Words and marks that the sheets of the calendar share.
#pragma once

#include <string>
#include <string_view>

#include "libsim/base/instant.h"
#include "libsim/writers/drawing.h"

namespace fillside {

inline constexpr Ink kNight{0.204, 0.192, 0.220};     ///< the hours without sun, #343138
inline constexpr Ink kSunMark{0.545, 0.271, 0.075};   ///< sun on the dish, #8b4513
inline constexpr Ink kGoodMark{0.318, 0.447, 0.349};  ///< good hours, #517259

/// "Jan" to "Dec".
std::string_view month_name(int month);
/// "21 Jun 2024".
std::string date_text(const Instant& date);
/// "9:05" of minutes from midnight, to the nearest minute.
std::string clock_text(double minute);
/// "UTC+1", "UTC-3:30".
std::string offset_text(int offset_min);

/// Slanting lines over a box, for what must be told apart without colour.
void hatch(Drawing& drawing, const Box& box, const Stroke& stroke, double spacing_px);

}  // namespace fillside
