#include "libsim/sensor/lens.h"

#include <cassert>
#include <cmath>
#include <limits>

namespace fillside {
namespace {

constexpr double kGreen_m = 550e-9;

/// Blur on either side of the focused plane that the circle of confusion allows, as a share of the distance:
/// c N (s - f) / f^2.
double allowed_share(const LensSetting& lens, Length confusion) {
  const double f = lens.focal_length.si;
  return confusion.si * lens.aperture.si * (lens.focus.si - f) / (f * f);
}

}  // namespace

double magnification(const LensSetting& lens) {
  assert(lens.focus > lens.focal_length);
  return lens.focal_length / (lens.focus - lens.focal_length);
}

Stops close_focus_loss(double magnification) { return stops(2.0 * std::log2(1.0 + magnification)); }

Length hyperfocal(const LensSetting& lens, Length confusion) {
  const double f = lens.focal_length.si;
  return metres(f * f / (lens.aperture.si * confusion.si) + f);
}

SharpZone sharp_zone(const LensSetting& lens, Length confusion) {
  const double share = allowed_share(lens, confusion), s = lens.focus.si;
  const double farthest = share < 1.0 ? s / (1.0 - share) : std::numeric_limits<double>::infinity();
  return {metres(s / (1.0 + share)), metres(farthest)};
}

Length blur_circle(const LensSetting& lens, Length distance) {
  const Length width = lens.focal_length / lens.aperture.si;
  return magnification(lens) * std::abs(1.0 - lens.focus / distance) * width;
}

LensSetting covering(Length focal_length, Length nearest, Length farthest, Length confusion) {
  assert(nearest < farthest && nearest > focal_length);
  const double f = focal_length.si, n = nearest.si, far = farthest.si;
  const double focus = 2.0 * n * far / (n + far), share = (far - n) / (far + n);
  return {focal_length, f_number(share * f * f / (confusion.si * (focus - f))), metres(focus)};
}

Length airy_disc(const LensSetting& lens) {
  return metres(2.44 * kGreen_m * lens.aperture.si * (1.0 + magnification(lens)));
}

}  // namespace fillside
