#include "libsim/view/developed.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "libsim/base/space.h"

namespace fillside {
namespace {

// Moved towards grey of luminance `y` (0..1) just as far as needed for every channel to be at most 1.
Rgb within_display(const Rgb& colour, double y) {
  const double brightest = colour.maxCoeff();
  if (brightest <= 1.0) return colour;
  return y + (colour - y) * ((1.0 - y) / (brightest - y));
}

Rgb on_curve(const Rgb& linear, const Development& development) {
  if (development.curve == ToneCurve::plain) return linear;
  const double before = luminance(linear);
  if (before <= 0.0) return linear;
  const double after = std::min(soft_shoulder(before, development.clip_at), 1.0);
  return within_display(linear * (after / before), after);
}

}  // namespace

double soft_shoulder(double luminance, double clip_at) {
  constexpr double grey = 0.18;
  // k in x = k * luminance from: x (1 + x / w^2) / (1 + x) = grey at luminance = grey, with w = k * clip_at.
  const double k = (1.0 - grey / (clip_at * clip_at)) / (1.0 - grey);
  const double x = k * luminance, w = k * clip_at;
  return x * (1.0 + x / (w * w)) / (1.0 + x);
}

Picture developed(std::span<const Rgb> scene_linear, int width, int height, const Development& development) {
  assert(scene_linear.size() == static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  assert(development.metered.si > 0.0);
  Picture picture = blank_picture(width, height);
  const Rgb scale = development.white_balance * (development.headroom * kPi / development.metered.si);
  for (std::size_t pixel = 0; pixel < scene_linear.size(); ++pixel) {
    if (!scene_linear[pixel].isFinite().all()) continue;
    const Rgb shown = on_curve((scene_linear[pixel] * scale).max(0.0), development);
    picture.set(static_cast<int>(pixel) % width, static_cast<int>(pixel) / width, shown);
  }
  return picture;
}

Rgb balance_for(const Rgb& neutral) {
  // The gains 1/r, 1/g, 1/b make it (1, 1, 1); times its luminance they keep how bright it is.
  return luminance(neutral) / neutral.max(1e-12);
}

}  // namespace fillside
