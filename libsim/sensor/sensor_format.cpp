#include "libsim/sensor/sensor_format.h"

#include <algorithm>
#include <cmath>

namespace fillside {

Length SensorFormat::circle_of_confusion() const {
  return millimetres(std::hypot(long_mm, short_mm) / 1500.0);
}

double SensorFormat::crop_factor() const { return std::hypot(36.0, 24.0) / std::hypot(long_mm, short_mm); }

const SensorFormat& sensor_format(std::string_view name) {
  const auto found = std::ranges::find(kSensorFormats, name, &SensorFormat::name);
  return found == kSensorFormats.end() ? kSensorFormats.front() : *found;
}

}  // namespace fillside
