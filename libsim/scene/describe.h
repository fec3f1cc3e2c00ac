// From what the file said to a Description, through the field tables. Nothing is refused at the first fault:
// every problem is collected.
#pragma once

#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/source_tree.h"

namespace fillside {

/// Fills every member whose key is there and right; what is absent or wrong keeps its default. Appends a
/// problem, with its line of the file, for each unknown heading or key, wrong type, unit, range or choice,
/// and for each name that two things bear. Things without a name get their default name (things.h).
Description describe(const SourceTree& tree, std::vector<Problem>& problems);

}  // namespace fillside
