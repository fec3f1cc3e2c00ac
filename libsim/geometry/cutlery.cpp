#include "libsim/geometry/cutlery.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/relief.h"

namespace fillside {

double handle_half_width(double along) {
  const double end = std::sqrt(std::max(0.0, 1.0 - std::pow(1.0 - std::min(along, 0.06) / 0.06, 2.0)));
  const double blade = 0.046 - 0.030 * smooth_step(0.05, 0.55, along);
  return std::max(0.004, blade * (0.25 + 0.75 * end));
}

double handle_height(double along) {
  return 0.012 + 0.085 * std::exp(-std::pow((along - 0.56) / 0.19, 2.0)) -
         0.01 * smooth_step(0.0, 0.25, 0.25 - along);
}

}  // namespace fillside
