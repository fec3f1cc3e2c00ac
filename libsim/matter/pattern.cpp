#include "libsim/matter/pattern.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace fillside {
namespace {

/// Index of a pixel and of its neighbour, in a row that repeats, and the way from one to the other.
struct Between {
  int here, next;
  double share;
};

Between between(double place, int count) {
  const double in_pixels = (place - std::floor(place)) * count - 0.5;  // a pixel's value is its middle's
  const double below = std::floor(in_pixels);
  const int here = (static_cast<int>(below) + count) % count;
  return {here, (here + 1) % count, in_pixels - below};
}

}  // namespace

Pattern::Pattern(PixelCodes codes) : codes_(std::move(codes)) {
  assert(codes_.width > 0 && codes_.height > 0);
  assert(codes_.rgb.size() ==
         3 * static_cast<std::size_t>(codes_.width) * static_cast<std::size_t>(codes_.height));
  set_scale(1.0);
}

void Pattern::set_scale(double scale) {
  for (std::size_t code = 0; code < reflectance_of_code_.size(); ++code)
    reflectance_of_code_[code] =
        std::min(scale * srgb_decoded(static_cast<double>(code) / 255.0), kMostOfAPattern);
  std::array<std::array<double, 256>, 3> seen{};
  for (std::size_t i = 0; i < codes_.rgb.size(); ++i) seen[i % 3][codes_.rgb[i]] += 1.0;
  mean_ = grey(0.0);
  for (std::size_t channel = 0; channel < 3; ++channel)
    for (std::size_t code = 0; code < 256; ++code)
      mean_[static_cast<int>(channel)] += seen[channel][code] * reflectance_of_code_[code];
  const std::size_t pixels = codes_.rgb.size() / 3;
  mean_ = (mean_ / static_cast<double>(pixels)).min(kMostOfAPattern);  // a sum is rounded
}

void Pattern::scale_to(double reflectance) {
  set_scale(1.0);
  if (luminance(mean_) > 0.0) set_scale(reflectance / luminance(mean_));
}

Rgb Pattern::pixel(int column, int row) const {
  const std::size_t first = 3 * (static_cast<std::size_t>(row) * static_cast<std::size_t>(codes_.width) +
                                 static_cast<std::size_t>(column));
  return {reflectance_of_code_[codes_.rgb[first]], reflectance_of_code_[codes_.rgb[first + 1]],
          reflectance_of_code_[codes_.rgb[first + 2]]};
}

Rgb Pattern::at(double u, double v) const {
  const Between x = between(u, codes_.width), y = between(-v, codes_.height);  // rows count downward
  const Rgb upper = (1.0 - x.share) * pixel(x.here, y.here) + x.share * pixel(x.next, y.here);
  const Rgb lower = (1.0 - x.share) * pixel(x.here, y.next) + x.share * pixel(x.next, y.next);
  return ((1.0 - y.share) * upper + y.share * lower).min(kMostOfAPattern);  // as above
}

}  // namespace fillside
