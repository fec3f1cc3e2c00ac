#include "libsim/light/sky.h"

#include <cmath>

namespace fillside {
namespace {

/// CIE S 011 eq. 5 over its value at the zenith; at the horizon exp(b / cos Z) has the limit 0.
double gradation(double a, double b, double sine_of_height) {
  const double phi = sine_of_height > 0.0 ? 1.0 + a * std::exp(b / sine_of_height) : 1.0;
  return phi / (1.0 + a * std::exp(b));
}

}  // namespace

std::optional<SkyKind> sky_named(std::string_view name) {
  if (name == "uniform") return SkyKind::uniform;
  if (name == "overcast") return SkyKind::overcast;
  if (name == "cie 1") return SkyKind::cie_1;
  if (name == "cie 5") return SkyKind::cie_5;
  return std::nullopt;
}

double relative_sky_luminance(SkyKind kind, double sine_of_height) {
  switch (kind) {
    case SkyKind::overcast: return (1.0 + 2.0 * sine_of_height) / 3.0;
    case SkyKind::cie_1: return gradation(4.0, -0.7, sine_of_height);
    case SkyKind::uniform:
    case SkyKind::cie_5: break;
  }
  return 1.0;
}

double horizontal_illuminance_per_zenith_luminance(SkyKind kind) {
  if (kind == SkyKind::overcast) return 7.0 * kPi / 9.0;
  // E = 2 pi integral of L(s) s ds over the sine s: Simpson's rule, error far below 1e-9 for these smooth skies.
  constexpr int kSteps = 2000;
  double sum = 0.0;
  for (int i = 0; i <= kSteps; ++i) {
    const double s = static_cast<double>(i) / kSteps;
    const double weight = i == 0 || i == kSteps ? 1.0 : (i % 2 == 1 ? 4.0 : 2.0);
    sum += weight * relative_sky_luminance(kind, s) * s;
  }
  return 2.0 * kPi * sum / (3.0 * kSteps);
}

}  // namespace fillside
