// How much of everything a scene may hold, so that a file which is no scene is refused at once.
#pragma once

#include <cstddef>
#include <vector>

#include "libsim/base/problem.h"

namespace fillside {

inline constexpr std::size_t kMostThings = 200;  ///< under one heading; a set has a few dozen in all
inline constexpr std::size_t kMostNames = 200;   ///< in one table of names
inline constexpr std::size_t kMostProblems =
    100;  ///< that are listed of one scene, and of one section's keys

/// The first kMostProblems in the order of the file, errors first to stay when there are too many; then one
/// that says how many more were found.
std::vector<Problem> shortened(std::vector<Problem> problems);

}  // namespace fillside
