// Do things go through each other?
#pragma once

#include <vector>

#include "libsim/scene/placed_set.h"

namespace fillside {

/// Boards and diffusers through the table, the food, a prop or each other, and food or props in the table:
/// errors, found on the things' own triangles. Food and props in each other, by upright cylinders and boxes
/// around them and deeper than 1 cm: warnings. Stops when there are more than kMostProblems. What stands `on`
/// another may be in it.
void check_passages(const PlacedSet& set, std::vector<Problem>& problems);

}  // namespace fillside
