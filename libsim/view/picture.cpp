#include "libsim/view/picture.h"

#include <cmath>

namespace fillside {

std::uint8_t code_of(double linear) {
  return static_cast<std::uint8_t>(std::lround(255.0 * srgb_encoded(linear)));
}

void Picture::set(int x, int y, const Rgb& linear) {
  const std::size_t first = first_sample(x, y);
  for (std::size_t channel = 0; channel < 3; ++channel)
    samples[first + channel] = code_of(linear[static_cast<Eigen::Index>(channel)]);
}

}  // namespace fillside
