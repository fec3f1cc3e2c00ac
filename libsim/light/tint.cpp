#include "libsim/light/tint.h"

#include <array>
#include <cmath>

namespace fillside {

double duv(const Chromaticity& colour) {
  constexpr double kCentreU = 0.292, kCentreV = 0.240;
  constexpr std::array kLocus{-0.471106, 1.925865, -2.4243787, 1.5317403, -0.5179722, 0.0893944, -0.00616793};
  const double d = -2.0 * colour.x + 12.0 * colour.y + 3.0;
  const double u = 4.0 * colour.x / d - kCentreU, v = 6.0 * colour.y / d - kCentreV;
  const double distance = std::hypot(u, v), angle = std::acos(u / distance);
  double of_the_locus = 0.0, power = 1.0;
  for (const double coefficient : kLocus) {
    of_the_locus += coefficient * power;
    power *= angle;
  }
  return distance - of_the_locus;
}

}  // namespace fillside
