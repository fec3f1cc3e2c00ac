#include "libsim/light/availability.h"

#include <cassert>
#include <cmath>

#include "libsim/base/space.h"

namespace fillside {
namespace {

bool is_up(Angle altitude) { return altitude.si > 0.0 && altitude.si <= 0.5 * kPi; }

}  // namespace

Weather weather_of_sky(int type) {
  if (type >= 11 && type <= 15) return Weather::clear;
  return type >= 6 && type <= 10 ? Weather::partly_cloudy : Weather::overcast;
}

std::optional<Illuminance> diffuse_horizontal_illuminance(Weather weather, Angle altitude) {
  if (!is_up(altitude)) return std::nullopt;
  const double sine = std::sin(altitude.si);
  switch (weather) {
    case Weather::clear:
      return lux(800.0 + 15500.0 * std::sqrt(sine));
    case Weather::partly_cloudy:
      return lux(300.0 + 45000.0 * sine);
    case Weather::overcast:
      break;
  }
  return lux(300.0 + 21000.0 * sine);
}

Illuminance direct_normal_at_air_mass(Weather weather, double air_mass) {
  assert(weather != Weather::overcast);
  const double extinction = weather == Weather::clear ? 0.21 : 0.80;
  return lux(127500.0 * std::exp(-extinction * air_mass));
}

std::optional<Illuminance> direct_normal_illuminance(Weather weather, Angle apparent_altitude,
                                                     int day_of_year) {
  if (weather == Weather::overcast || !is_up(apparent_altitude)) return std::nullopt;
  return distance_factor(day_of_year) *
         direct_normal_at_air_mass(weather, relative_air_mass(apparent_altitude));
}

double distance_factor(int day_of_year) {
  return 1.0 + 0.034 * std::cos(2.0 * kPi * (day_of_year - 2) / 365.0);
}

double relative_air_mass(Angle apparent_altitude) {
  const double altitude_deg = in_degrees(apparent_altitude);
  return 1.0 / (std::sin(apparent_altitude.si) + 0.50572 * std::pow(altitude_deg + 6.07995, -1.6364));
}

Luminance overcast_zenith_luminance(Angle altitude) {
  return candela_per_m2(123.0 + 8600.0 * std::sin(altitude.si));
}

Luminance clear_zenith_luminance(Angle altitude, double turbidity) {
  return candela_per_m2(1000.0 * ((1.376 * turbidity - 1.81) * std::tan(altitude.si) + 0.38));
}

}  // namespace fillside
