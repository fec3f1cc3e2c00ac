#include "libsim/light/horizon.h"

#include <algorithm>
#include <cmath>

namespace fillside {

double full_turn(double angle_rad) {
  const double rest = std::fmod(angle_rad, 2.0 * kPi);
  const double turned = rest < 0.0 ? rest + 2.0 * kPi : rest;
  return turned < 2.0 * kPi ? turned : 0.0;  // -1e-20 + 2 pi rounds to 2 pi
}

Direction toward_azimuth(double azimuth_rad, Compass compass) {
  const double from_y = azimuth_rad - compass.azimuth_of_y_rad;
  return {std::sin(from_y), std::cos(from_y), 0.0};
}

Direction toward(double altitude_rad, double azimuth_rad, Compass compass) {
  Direction direction = std::cos(altitude_rad) * toward_azimuth(azimuth_rad, compass);
  direction.z() = std::sin(altitude_rad);
  return direction;
}

double altitude_of(const Direction& direction) {
  return std::atan2(direction.z(), std::hypot(direction.x(), direction.y()));
}

double azimuth_of(const Direction& direction, Compass compass) {
  if (direction.x() == 0.0 && direction.y() == 0.0) return 0.0;
  return full_turn(std::atan2(direction.x(), direction.y()) + compass.azimuth_of_y_rad);
}

}  // namespace fillside
