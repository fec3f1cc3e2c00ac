#include "libsim/view/averaged.h"

#include <cmath>

namespace fillside {
namespace {

// One pass along rows (`count` columns, `step` 1) or along columns (`count` rows, `step` one row).
std::vector<float> averaged_along(const std::vector<float>& values, int count, std::size_t step) {
  std::vector<float> out = values;
  for (std::size_t cell = 0; cell < values.size(); ++cell) {
    const auto place = static_cast<int>(cell / step % static_cast<std::size_t>(count));
    if (place == 0 || place == count - 1) continue;
    const float mean = 0.25F * (values[cell - step] + 2.0F * values[cell] + values[cell + step]);
    if (std::isfinite(mean)) out[cell] = mean;
  }
  return out;
}

}  // namespace

Map averaged(Map map, int passes) {
  for (int pass = 0; pass < passes; ++pass) {
    map.values = averaged_along(map.values, map.columns, 1);
    map.values = averaged_along(map.values, map.rows, static_cast<std::size_t>(map.columns));
  }
  return map;
}

}  // namespace fillside
