// What the numbers of the camera alone cannot say: that they fit each other and the set.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

void check_camera_keys(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
