// The answer of fillside compare for programs.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "libsim/what_if/comparison.h"
#include "libsim/what_if/shared_reading.h"
#include "tools/compared_sets.h"

namespace fillside::tools {

nlohmann::ordered_json compare_json(const std::vector<ComparedSet>& sets,
                                    const std::vector<Comparison>& comparisons, const SharedReading& reading,
                                    const Effort& effort);

}  // namespace fillside::tools
