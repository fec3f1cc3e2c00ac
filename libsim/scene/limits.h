// Long lists of problems, cut to what a person reads (base/limits.h).
#pragma once

#include <vector>

#include "libsim/base/limits.h"
#include "libsim/base/problem.h"

namespace fillside {

/// The first kMostProblems in the order of the file, errors first to stay when there are too many; then one
/// that says how many more were found.
std::vector<Problem> shortened(std::vector<Problem> problems);

}  // namespace fillside
