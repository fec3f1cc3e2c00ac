// The standards checks of fillside check --light, for people and for programs.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/what_if/light_checks.h"

namespace fillside::tools {

/// Two lines a check: verdict, what, expected, computed; below it the source.
std::string light_table(const std::vector<LightCheck>& checks, std::uint64_t seed);
nlohmann::ordered_json light_json(const std::vector<LightCheck>& checks, std::uint64_t seed);

}  // namespace fillside::tools
