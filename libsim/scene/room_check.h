// Checks of the room as a box: openings in their walls, the dish and the table's height inside.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// The box is the one of place_room. What stands in it is the business of check_placed.
void check_room(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
