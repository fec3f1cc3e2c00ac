#include "libsim/light/sun.h"

#include <algorithm>
#include <cmath>

namespace fillside {

Rgb radiance_of(const SunDisc& sun) {
  const double sine = std::sin(sun.half_angle_rad);
  return sun.colour * (sun.normal_illuminance_lx / (kPi * sine * sine));
}

// By the chord, not the cosine: 1 - cos of a quarter degree keeps only eleven of its sixteen digits.
bool is_on_disc(const SunDisc& sun, const Direction& outward) {
  return (outward - sun.to_sun).norm() <= 2.0 * std::sin(0.5 * sun.half_angle_rad);
}

double solid_angle_sr(const SunDisc& sun) {
  const double sine = std::sin(0.5 * sun.half_angle_rad);
  return 4.0 * kPi * sine * sine;
}

Direction draw_in_disc(const SunDisc& sun, double u, double v) {
  constexpr double kInside = 1.0 - 1e-9;  // so that rounding leaves every draw on the disc
  const double chord = kInside * 2.0 * std::sin(0.5 * sun.half_angle_rad) * std::sqrt(u);
  const double cosine = 1.0 - 0.5 * chord * chord, sine = std::sqrt(std::max(0.0, 1.0 - cosine * cosine));
  return frame_around(sun.to_sun)
      .to_world({sine * std::cos(2.0 * kPi * v), sine * std::sin(2.0 * kPi * v), cosine});
}

Rgb illuminance_by(const SunDisc& sun, const Direction& normal) {
  return sun.colour * (sun.normal_illuminance_lx * std::max(0.0, sun.to_sun.dot(normal)));
}

}  // namespace fillside
