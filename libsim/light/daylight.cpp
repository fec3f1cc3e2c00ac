#include "libsim/light/daylight.h"

#include "libsim/light/availability.h"
#include "libsim/light/chromaticity.h"
#include "libsim/light/daylight_colour.h"

namespace fillside {
namespace {

constexpr int kHiddenSun = 9;

Rgb colour_of(double temperature_K) { return light_of_temperature(temperature_K).value(); }

Illuminance usual_direct_normal(int sky_type, Angle altitude, int day_of_year) {
  if (sky_type == kHiddenSun) return lux(0.0);
  return direct_normal_illuminance(weather_of_sky(sky_type), altitude, day_of_year).value_or(lux(0.0));
}

}  // namespace

Rgb level_illuminance(const Daylight& light) {
  const Rgb by_sky = light.zenith_radiance * horizontal_illuminance_per_zenith_luminance(light.sky);
  return light.sun ? Rgb(by_sky + illuminance_by(*light.sun, Direction::UnitZ())) : by_sky;
}

Rgb front_illuminance_without_sun(const Daylight& light, const Direction& facing) {
  return light.zenith_radiance * vertical_illuminance_per_zenith_luminance(light.sky, facing) +
         light.ground_radiance * (0.5 * kPi);
}

Rgb front_illuminance(const Daylight& light, const Direction& facing) {
  const Rgb even = front_illuminance_without_sun(light, facing);
  return light.sun ? Rgb(even + illuminance_by(*light.sun, facing)) : even;
}

std::optional<Daylight> daylight_by(const SunPosition& sun, int day_of_year, int sky_type, Compass compass,
                                    const DaylightFigures& figures) {
  const Angle altitude = radians(sun.apparent_altitude_rad);
  const auto usual_diffuse = diffuse_horizontal_illuminance(weather_of_sky(sky_type), altitude);
  if (!usual_diffuse) return std::nullopt;
  Daylight light;
  light.sky = {sky_type, toward(sun.apparent_altitude_rad, sun.azimuth_rad, compass)};
  const Luminance zenith = zenith_luminance(light.sky, figures.diffuse_horizontal.value_or(*usual_diffuse));
  light.zenith_radiance =
      zenith.si * colour_of(figures.sky_temperature_K.value_or(usual_sky_temperature_K(sky_type)));
  const Illuminance direct =
      figures.direct_normal.value_or(usual_direct_normal(sky_type, altitude, day_of_year));
  if (direct > lux(0.0))
    light.sun = {light.sky.to_sun, sun_half_angle_rad(sun.distance_au), direct.si,
                 colour_of(figures.sun_temperature_K.value_or(usual_sun_temperature_K(altitude)))};
  light.ground_radiance = figures.ground_reflectance * level_illuminance(light) / kPi;
  return light;
}

}  // namespace fillside
