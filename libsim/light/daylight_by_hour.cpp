#include "libsim/light/daylight_by_hour.h"

#include <algorithm>
#include <cmath>

#include "libsim/light/availability.h"
#include "libsim/light/daylight_colour.h"

namespace fillside {

DaylightByHour::DaylightByHour(int sky_type, const Rgb& ground_reflectance)
    : type_(sky_type), ground_reflectance_(ground_reflectance), sky_colour_(usual_sky_colour(sky_type)) {
  for (int degree = 0; degree <= kSteps; ++degree) {
    auto& entry = per_zenith_sr_[static_cast<std::size_t>(degree)];
    if (degree > 0 && !depends_on_sun(type_))
      entry = per_zenith_sr_[0];
    else
      entry = horizontal_illuminance_per_zenith_luminance({type_, toward(degree * kDegree, 0.0)});
  }
}

double DaylightByHour::level_illuminance_per_zenith_luminance(double altitude_rad) const {
  const double at = std::clamp(altitude_rad / kDegree, 0.0, kSteps - 1e-9);
  const auto below = static_cast<std::size_t>(at);
  // The figure runs over decades, evenly in its logarithm.
  return std::exp(std::lerp(std::log(per_zenith_sr_[below]), std::log(per_zenith_sr_[below + 1]),
                            at - static_cast<double>(below)));
}

std::optional<Daylight> DaylightByHour::at(const SunPosition& sun, int day_of_year, Compass compass) const {
  const Angle altitude = radians(sun.apparent_altitude_rad);
  const Weather weather = weather_of_sky(type_);
  const auto diffuse = diffuse_horizontal_illuminance(weather, altitude);
  if (!diffuse) return std::nullopt;
  Daylight light;
  light.sky = {type_, toward(sun.apparent_altitude_rad, sun.azimuth_rad, compass)};
  light.zenith_radiance = sky_colour_ * (diffuse->si / level_illuminance_per_zenith_luminance(altitude.si));
  Rgb level_lx = sky_colour_ * diffuse->si;
  if (const auto direct = direct_normal_illuminance(weather, altitude, day_of_year)) {
    light.sun = {light.sky.to_sun, sun_half_angle_rad(sun.distance_au), direct->si,
                 usual_sun_colour(altitude)};
    level_lx += illuminance_by(*light.sun, Direction::UnitZ());
  }
  light.ground_radiance = ground_reflectance_ * level_lx / kPi;
  return light;
}

}  // namespace fillside
