// Can the camera and the meters be where they are said to be?
#pragma once

#include <vector>

#include "libsim/scene/placed_set.h"

namespace fillside {

/// The lens outside the room or below the table top; the lens, or a meter, inside food, a prop, a board, a
/// cloth or the table. Food that is taken away for a meter's reading is not there for it.
void check_instruments(const PlacedSet& set, std::vector<Problem>& problems);

}  // namespace fillside
