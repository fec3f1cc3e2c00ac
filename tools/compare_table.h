// The answer of fillside compare as text.
#pragma once

#include <string>
#include <vector>

#include "libsim/what_if/comparison.h"
#include "libsim/what_if/shared_reading.h"
#include "tools/compared_sets.h"

namespace fillside::tools {

/// "+0.34 ± 0.02", with as many decimals as the error bar has; "-" when it is no number.
std::string change_text(const Estimate& stops);

/// The first set, then each other with what differs; `comparisons` are of the second set and on.
std::string compare_table(const std::vector<ComparedSet>& sets, const std::vector<Comparison>& comparisons,
                          const SharedReading& reading, const Effort& effort);

}  // namespace fillside::tools
