// Checks of lamps: is each said once and in one way, and is there room for it?
#pragma once

#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/placed_set.h"

namespace fillside {

/// Strength, size, place and direction, as far as the section tells them.
void check_lamps(const Description& description, std::vector<Problem>& problems);

/// Lamps in the food, the table, a board or each other; and readings taken within a lamp. The description
/// must have passed check_lamps.
void check_placed_lamps(const PlacedSet& set, std::vector<Problem>& problems);

}  // namespace fillside
