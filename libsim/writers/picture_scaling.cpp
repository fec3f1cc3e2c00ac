#include "libsim/writers/picture_scaling.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#define STB_IMAGE_RESIZE_STATIC
#define STB_IMAGE_RESIZE_IMPLEMENTATION
#include <stb/stb_image_resize.h>

#include "libsim/base/problem.h"

namespace fillside {

Picture scaled(const Picture& picture, int width, int height) {
  assert(picture.channels == 3 && width >= 1 && height >= 1);
  Picture out = blank_picture(width, height);
  const int done =
      stbir_resize_uint8_srgb(picture.samples.data(), picture.width, picture.height, 0, out.samples.data(),
                              width, height, 0, 3, STBIR_ALPHA_CHANNEL_NONE, 0);
  if (done != 1) throw WriteError("cannot scale a picture: out of memory; try a smaller one");
  return out;
}

Picture scaled_to_fit(const Picture& picture, int width, int height) {
  const double scale =
      std::min(width / static_cast<double>(picture.width), height / static_cast<double>(picture.height));
  const auto side = [scale](int pixels) {
    return std::max(1, static_cast<int>(std::lround(scale * pixels)));
  };
  return scaled(picture, side(picture.width), side(picture.height));
}

}  // namespace fillside
