// What a description must satisfy beyond its keys.
#pragma once

#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// Every problem, errors and warnings, in the file's order and with its line: shares of light that add up to
/// more than one, names that name nothing, openings that do not fit their wall, sizes and places said twice
/// or not at all, claims without a figure; and, once these are right, things that stand in a wall or in each
/// other (placed_check.h). Mesh files and pictures are looked for beside the scene,
/// but not read.
std::vector<Problem> check(const Description& description);

}  // namespace fillside
