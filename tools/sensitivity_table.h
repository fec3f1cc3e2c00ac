// The answer of fillside sensitivity, for people and for programs.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "libsim/scene/description.h"
#include "libsim/what_if/sensitivity.h"

namespace fillside::tools {

/// One block a figure: what moves it, the most first, what to measure, and what to stop worrying about.
std::string sensitivity_table(const Description& description, const Sensitivity& answer,
                              const Effort& effort);

nlohmann::ordered_json sensitivity_json(const Description& description, const Sensitivity& answer,
                                        const Effort& effort);

}  // namespace fillside::tools
