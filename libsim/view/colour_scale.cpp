#include "libsim/view/colour_scale.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/space.h"

namespace fillside {
namespace {

// The circle of the helix: as wide as the display's gamut lets it be at both ends.
Oklab on_helix(double position) {
  const double angle = (-100.0 + 222.0 * position) * kDegree;
  return {0.24 + 0.71 * position, 0.037 + 0.069 * std::cos(angle), 0.002 + 0.069 * std::sin(angle)};
}

Oklab on_arms(double position) {
  const Oklab middle{0.945, 0.002, 0.010};
  const Oklab less{0.40, 0.012, -0.120}, more{0.40, 0.092, 0.077};
  const Oklab& end = position < 0.5 ? less : more;
  const double along = std::abs(2.0 * position - 1.0);
  return {std::lerp(middle.lightness, end.lightness, along), std::lerp(middle.a, end.a, along),
          std::lerp(middle.b, end.b, along)};
}

}  // namespace

Oklab point_on_scale(ColourScale scale, double position) {
  const double clamped = std::clamp(position, 0.0, 1.0);
  return scale == ColourScale::sequential ? on_helix(clamped) : on_arms(clamped);
}

Rgb colour_on_scale(ColourScale scale, double position) {
  return linear_of(point_on_scale(scale, position)).max(0.0).min(1.0);
}

}  // namespace fillside
