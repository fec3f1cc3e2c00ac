// Checks of where things are said to be and what they refer to by name.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// A spot given twice or by half; `on` naming nothing that carries; instruments with half a direction; mesh
/// files that are not there; [set] naming a window or meter that is not there.
void check_spots(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
