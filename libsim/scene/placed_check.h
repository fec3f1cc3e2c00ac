// Checks of where things come to stand in space: what no set on a real table can do, and what its owner
// cannot have meant.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// Things through a wall, the floor, the ceiling or the table; boards, cloths and food through each other;
/// camera and meters inside something; things that hang in the air (warning) or lie under the table
/// (warning). Each with the place of the key that put it there and how far to move it. What is not used is
/// not there.
///
/// The description must have passed the other checks. OBJ meshes are known only once they are loaded: of them
/// no more than the foot is checked, and a camera or meter that goes by the height of an OBJ subject is taken
/// to go by the rest of the subject.
void check_placed(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
