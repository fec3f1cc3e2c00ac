// Where the tones of a picture lie: how much of it clips, how much drowns, and how the rest is spread.
#pragma once

#include <span>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/base/quantity.h"
#include "libsim/view/picture.h"

namespace fillside {

/// What the tones are judged against.
struct ToneLimits {
  Luminance full;  ///< a channel that reaches this clips: see clipping.h
  Luminance grey;  ///< of an 18 % grey card in the metered light
};
/// Five stops under the grey card a print shows no more drawing (common practice).
inline constexpr Stops kBuriedUnder = stops(-5.0);

enum class Tone { drawn, clipped, buried };
Tone tone_of(const Rgb& scene_linear, const ToneLimits& limits);

struct ToneShares {
  double clipped = 0.0, buried = 0.0;  ///< 0..1 of the pixels
};
ToneShares tone_shares(std::span<const Rgb> scene_linear, const ToneLimits& limits);

/// Shares of the pixels by stops from the grey card: half a stop a bin, from -8 to +4; what lies beyond is
/// counted in the last bin of its side.
struct Histogram {
  double first_stop = -8.0, bin_stops = 0.5;
  std::vector<double> share;
};
Histogram histogram_of(std::span<const Rgb> scene_linear, const ToneLimits& limits);

/// Stripes over what clips (black and white, falling to the right) and what is buried (grey, rising): they
/// stay apart in print, too.
void draw_zebra(Picture& picture, std::span<const Rgb> scene_linear, const ToneLimits& limits);
/// A piece of the stripes, for the legend.
Picture zebra_patch(Tone tone, int width, int height);

}  // namespace fillside
