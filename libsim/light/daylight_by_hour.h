// Daylight of one kind of weather at any hour of the year, quickly: the same as daylight_by with its usual
// figures, with the sky's integral read from a table over the sun's altitude.
#pragma once

#include <array>
#include <optional>

#include "libsim/light/daylight.h"

namespace fillside {

class DaylightByHour {
 public:
  /// Type 1 to 16 of the general sky.
  DaylightByHour(int sky_type, const Rgb& ground_reflectance);

  /// Nothing when the sun's middle is not above the horizon. Within 0.1 % of daylight_by.
  std::optional<Daylight> at(const SunPosition& sun, int day_of_year, Compass compass) const;

 private:
  static constexpr int kSteps = 90;  // of a degree
  double level_illuminance_per_zenith_luminance(double altitude_rad) const;

  int type_;
  Rgb ground_reflectance_, sky_colour_;
  std::array<double, kSteps + 1> per_zenith_sr_{};
};

}  // namespace fillside
