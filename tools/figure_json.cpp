#include "tools/figure_json.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace fillside::tools {

nlohmann::ordered_json number_json(double value) {
  return std::isfinite(value) ? nlohmann::ordered_json(value) : nlohmann::ordered_json(nullptr);
}

nlohmann::ordered_json figure_json(const Estimate& estimate) {
  return {{"value", number_json(estimate.value())},
          {"standard_error", number_json(estimate.standard_error())},
          {"half_width_95", number_json(estimate.half_width_95())}};
}

const char* receptor_word(ReadingKind kind) {
  return kind == ReadingKind::dome ? "dome" : (kind == ReadingKind::patch ? "patch" : "flat");
}

}  // namespace fillside::tools
