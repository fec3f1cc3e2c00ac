#include "libsim/what_if/white_steps.h"

#include <algorithm>

#include "libsim/light/chromaticity.h"
#include "libsim/view/developed.h"

namespace fillside {

std::vector<WhiteStep> white_steps(const White& white) {
  constexpr int kStep_mired = 10, kMost_mired = 100;
  constexpr double kLeast_K = 1700.0, kMost_K = 25000.0;
  const double own_K = std::clamp(correlated_temperature_K(chromaticity_of(white.light)), kLeast_K, kMost_K);
  const Rgb own = *light_of_temperature(own_K);
  std::vector<WhiteStep> steps;
  for (int shift = -kMost_mired; shift <= kMost_mired; shift += kStep_mired) {
    // A picture comes out warmer when a bluer light is taken for white.
    const double inverse = mired(own_K) - shift;
    if (inverse <= 0.0) continue;
    const double kelvin = shift == 0 ? own_K : 1e6 / inverse;
    if (kelvin < kLeast_K || kelvin > kMost_K) continue;
    const auto light = light_of_temperature(kelvin);
    if (!light) continue;
    const Rgb neutral = shift == 0 ? white.light : Rgb(white.light * *light / own.max(1e-3));
    steps.push_back({static_cast<double>(shift), kelvin, balance_for(neutral)});
  }
  return steps;
}

}  // namespace fillside
