// Checks of claims: that each says what, how much and how sure.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// Claims without a figure or a bound, without a tolerance for `is`, with bounds that exclude each other, or
/// `without` something that is not there.
void check_claims(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
