// A finished picture: 8-bit sRGB code values, as screens and PNG files want them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "libsim/base/colour.h"

namespace fillside {

struct Picture {
  int width = 0, height = 0;
  int channels = 3;                   ///< 3: RGB; 4: RGB and opacity
  std::vector<std::uint8_t> samples;  ///< height x width x channels, top row first

  std::size_t first_sample(int x, int y) const {
    return (static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)) *
           static_cast<std::size_t>(channels);
  }
  /// Writes the first three channels of a pixel; what is outside 0..1 is cut off.
  void set(int x, int y, const Rgb& linear);
};

/// The 8-bit sRGB code value, 0 to 255, of a linear channel, cut off to 0..1.
std::uint8_t code_of(double linear);

/// A picture of one colour, all samples `code`.
inline Picture blank_picture(int width, int height, std::uint8_t code = 0) {
  return {width, height, 3,
          std::vector<std::uint8_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(height) * 3,
                                    code)};
}

}  // namespace fillside
