// A set's readings for programs: schema "fillside.meter/1".
#pragma once

#include <nlohmann/json.hpp>

#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/set_reading.h"

namespace fillside::tools {

nlohmann::ordered_json meter_json(const Description& description, const SetReading& set, const Effort& effort,
                                  const ExposurePlan& plan);

}  // namespace fillside::tools
