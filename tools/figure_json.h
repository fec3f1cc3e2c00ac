// A figure with its error bar, for programs.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "libsim/base/estimate.h"
#include "libsim/view/reading.h"

namespace fillside::tools {

/// A figure that does not exist (no light, nothing to divide by) is null, never a made-up number.
nlohmann::ordered_json number_json(double value);
/// Value, standard error and 95 % half width.
nlohmann::ordered_json figure_json(const Estimate& estimate);
/// "dome", "patch", "flat".
const char* receptor_word(ReadingKind kind);

}  // namespace fillside::tools
