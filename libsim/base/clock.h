// Clock positions on the table: the camera stands at 6, what is behind the dish is 12, right is 3, left is 9.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "libsim/base/space.h"

namespace fillside {

struct Clock {
  double hours = 12.0;  ///< 0 <= hours < 12 or 12 itself
  friend auto operator<=>(Clock, Clock) = default;
};

/// Horizontal direction from the dish to that hour.
Direction to_clock(Clock clock);
/// The hour of a horizontal direction, 0 < hours <= 12.
Clock clock_of(const Direction& from_dish);

/// "9:30", "9" or "10.5"; nothing when it is not an hour from 0 to 12.
std::optional<Clock> parse_clock(std::string_view text);
std::string to_text(Clock clock);

}  // namespace fillside
