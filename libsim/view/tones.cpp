#include "libsim/view/tones.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace fillside {
namespace {

double stops_from_grey(const Rgb& scene_linear, const ToneLimits& limits) {
  return std::log2(luminance(scene_linear) / limits.grey.si);
}

/// Which of two colours a stripe of that picture has there; `rising` to the right or falling.
bool is_dark_stripe(int x, int y, bool rising) {
  constexpr int kStripe = 3;
  const int along = rising ? x + y : x - y;
  return std::lround(std::floor(along / static_cast<double>(kStripe))) % 2 == 0;
}

void draw_stripe(Picture& picture, int x, int y, Tone tone) {
  if (tone == Tone::clipped) picture.set(x, y, grey(is_dark_stripe(x, y, false) ? 0.0 : 1.0));
  if (tone == Tone::buried) picture.set(x, y, grey(is_dark_stripe(x, y, true) ? 0.0 : 0.1));
}

}  // namespace

Tone tone_of(const Rgb& scene_linear, const ToneLimits& limits) {
  if (scene_linear.maxCoeff() >= limits.full.si) return Tone::clipped;
  return stops_from_grey(scene_linear, limits) < kBuriedUnder.si ? Tone::buried : Tone::drawn;
}

ToneShares tone_shares(std::span<const Rgb> scene_linear, const ToneLimits& limits) {
  ToneShares shares;
  const double one = 1.0 / static_cast<double>(std::max<std::size_t>(scene_linear.size(), 1));
  for (const Rgb& pixel : scene_linear) {
    const Tone tone = tone_of(pixel, limits);
    if (tone == Tone::clipped) shares.clipped += one;
    if (tone == Tone::buried) shares.buried += one;
  }
  return shares;
}

Histogram histogram_of(std::span<const Rgb> scene_linear, const ToneLimits& limits) {
  constexpr int kBins = 24;
  Histogram histogram{.share = std::vector<double>(kBins, 0.0)};
  const double one = 1.0 / static_cast<double>(std::max<std::size_t>(scene_linear.size(), 1));
  for (const Rgb& pixel : scene_linear) {
    const double bin = (stops_from_grey(pixel, limits) - histogram.first_stop) / histogram.bin_stops;
    const double kept = std::isnan(bin) ? 0.0 : std::clamp(bin, 0.0, kBins - 1.0);
    histogram.share[static_cast<std::size_t>(kept)] += one;
  }
  return histogram;
}

void draw_zebra(Picture& picture, std::span<const Rgb> scene_linear, const ToneLimits& limits) {
  assert(scene_linear.size() ==
         static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      const auto pixel =
          static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) + static_cast<std::size_t>(x);
      draw_stripe(picture, x, y, tone_of(scene_linear[pixel], limits));
    }
}

Picture zebra_patch(Tone tone, int width, int height) {
  Picture patch = blank_picture(width, height);
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) draw_stripe(patch, x, y, tone);
  return patch;
}

}  // namespace fillside
