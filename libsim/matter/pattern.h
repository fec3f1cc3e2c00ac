// A picture of a surface: wood grain, a printed backdrop, a tiled wall. Says what share of light each place
// returns; between pixels it goes evenly from one to the next, past its edges it repeats.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "libsim/base/colour.h"

namespace fillside {

/// Code values of a picture's pixels as read: red, green, blue, row by row from the top left.
struct PixelCodes {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
};

/// No paper or paint returns more: codes that stand for more count as this.
inline constexpr double kMostOfAPattern = 0.95;

class Pattern {
 public:
  /// Codes are sRGB (IEC 61966-2-1:1999) and become linear reflectances, each channel held to
  /// kMostOfAPattern. Asserts a width and height of at least 1 and as many codes as they need.
  explicit Pattern(PixelCodes codes);

  /// Reflectance at a place: u to the right and v upward, one picture is 1 wide and 1 high.
  Rgb at(double u, double v) const;
  /// Mean over the whole picture.
  Rgb mean() const { return mean_; }
  int width() const { return codes_.width; }
  int height() const { return codes_.height; }

  /// All reflectances times one number, so that the mean's luminance is `reflectance`; what would pass
  /// kMostOfAPattern is held there, and the mean is then a little less. A black picture stays black.
  void scale_to(double reflectance);

 private:
  Rgb pixel(int column, int row) const;
  void set_scale(double scale);

  PixelCodes codes_;
  std::array<double, 256> reflectance_of_code_{};
  Rgb mean_ = grey(0.0);
};

}  // namespace fillside
