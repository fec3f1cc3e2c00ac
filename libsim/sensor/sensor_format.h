// Sensors by size.
#pragma once

#include <array>
#include <string_view>

#include "libsim/base/quantity.h"

namespace fillside {

struct SensorFormat {
  std::string_view name;
  double long_mm, short_mm;

  /// A blur that passes for a point in a print looked at whole: the diagonal / 1500 (common practice).
  Length circle_of_confusion() const;
  /// How many times smaller than 36 x 24 mm it is, by the diagonal.
  double crop_factor() const;
};

/// Sides as the makers print them; "phone" is a usual 1/1.3 inch main camera. From memory.
inline constexpr std::array kSensorFormats{
    SensorFormat{"full frame", 36.0, 24.0}, SensorFormat{"APS-C", 23.5, 15.6},
    SensorFormat{"micro four thirds", 17.3, 13.0}, SensorFormat{"one inch", 13.2, 8.8},
    SensorFormat{"phone", 9.8, 7.3}};

/// The format of that name; full frame for any other.
const SensorFormat& sensor_format(std::string_view name);

}  // namespace fillside
