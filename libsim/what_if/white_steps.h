// White set a little warmer or cooler than the picture's own, as one does with a slider.
#pragma once

#include <vector>

#include "libsim/what_if/white_balance.h"

namespace fillside {

struct WhiteStep {
  double mired = 0.0;   ///< warmer than as taken: above zero
  double kelvin = 0.0;  ///< of the light that then counts as white
  Rgb balance = grey(1.0);
};

/// Steps of 10 mired from -100 to +100, as far as the white stays within 1700 to 25000 K. The step of 0 gives
/// balance_for(white.light) itself; the others what a light so much cooler or warmer than it needs.
std::vector<WhiteStep> white_steps(const White& white);

}  // namespace fillside
