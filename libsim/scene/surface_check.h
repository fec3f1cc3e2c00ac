// Checks of what things are made of: catalogue names, and light that would be returned or passed more than
// once.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// Unknown surfaces, cloths and sheets; sheet and own size at odds; reflectance and transmittance above one
/// in sum, with the catalogue's figures for those left out; colours that cannot reach their reflectance
/// (warning).
void check_surfaces(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
