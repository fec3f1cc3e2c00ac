// A set's readings as tables for people.
#pragma once

#include <string>

#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/set_reading.h"

namespace fillside::tools {

std::string meter_table(const Description& description, const SetReading& set, const Effort& effort,
                        const ExposurePlan& plan);

/// "813 ± 4": the value rounded to where its error bar begins.
std::string with_error(const Estimate& figure);

}  // namespace fillside::tools
