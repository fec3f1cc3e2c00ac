// The four walls of the room as plain numbers, and which of them a window opens in.
#pragma once

#include <array>

#include "libsim/base/space.h"
#include "libsim/scene/description.h"

namespace fillside {

/// A wall seen from the dish. `from_m` to `to_m` run to the right as one faces it, from the dish's foot on
/// it.
struct WallSpan {
  Direction to_wall;  ///< level, from the dish, square to the wall
  double distance_m = 0.0;
  double from_m = 0.0, to_m = 0.0;
};

/// An opening on its wall: right of the dish's foot, and above the floor.
struct OpeningSpan {
  double left_m = 0.0, right_m = 0.0, bottom_m = 0.0, top_m = 0.0;
};

/// First the wall of the first window, then those to its right, opposite, and to its left.
std::array<WallSpan, 4> walls_of(const Description& description);

/// Index into walls_of of the wall whose direction is nearest to the window's clock.
std::size_t wall_of(const std::array<WallSpan, 4>& walls, const WindowSection& window);

/// The window's own size over its stock size. Stock sizes: common practice, rounded.
OpeningSpan opening_of(const WindowSection& window);

}  // namespace fillside
