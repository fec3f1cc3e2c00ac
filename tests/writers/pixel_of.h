// Looking at one pixel of a picture.
#pragma once

#include <array>

#include "libsim/view/picture.h"

namespace fillside {

inline std::array<int, 3> pixel_of(const Picture& picture, double x, double y) {
  const std::size_t i = picture.first_sample(static_cast<int>(x), static_cast<int>(y));
  return {picture.samples[i], picture.samples[i + 1], picture.samples[i + 2]};
}

}  // namespace fillside
