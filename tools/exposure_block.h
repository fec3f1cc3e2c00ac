// What to set the camera to, as text for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "libsim/what_if/exposure_plan.h"

namespace fillside::tools {

/// Two lines: the starting point from a tripod and by hand.
std::string exposure_lines(const ExposurePlan& plan);
/// The whole block: equivalents, clipping, depth, motion, frame.
std::string exposure_block(const ExposurePlan& plan);
nlohmann::ordered_json exposure_json(const ExposurePlan& plan);

}  // namespace fillside::tools
