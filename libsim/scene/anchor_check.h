// An anchor must say one reading, whole, at a meter that is there.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

void check_anchor(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
