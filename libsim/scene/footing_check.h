// Does everything stand on something?
#pragma once

#include <vector>

#include "libsim/scene/placed_set.h"

namespace fillside {

/// Warnings for what stands on the table, yet beyond its edge, and for what lies below its top. A folded
/// board with a lean is refused: its wings would no longer meet.
void check_footings(const PlacedSet& set, std::vector<Problem>& problems);

}  // namespace fillside
