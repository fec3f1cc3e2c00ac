// Checks of the room as a box: openings in their walls, the dish, the table's height and the camera inside.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// The box is square to the first window's clock; the others open in the nearest of its four walls. Only
/// plain numbers are used.
void check_room(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
