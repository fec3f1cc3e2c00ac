#include "libsim/scene/daylight.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "libsim/light/availability.h"
#include "libsim/light/daylight_colour.h"
#include "libsim/light/sun_position.h"
#include "libsim/scene/finish.h"

namespace fillside {
namespace {

constexpr Illuminance kUsualOutdoor = lux(10000.0);

Clock first_clock(const Description& d) { return d.windows.empty() ? Clock{9.0} : d.windows.front().clock; }

double clock_angle_rad(Clock clock) { return clock.hours * 30.0 * kDegree; }

std::optional<EarthPlace> place_of(const DaylightSection& day) {
  if (!day.latitude || !day.longitude) return std::nullopt;
  return EarthPlace{day.latitude->si, day.longitude->si, 0.0};
}

std::optional<Direction> sun_by_angles(const Description& d) {
  const DaylightSection& day = d.daylight;
  if (!day.sun_altitude || !day.sun_off_window) return std::nullopt;
  // Right as one looks out of the window is clockwise, as clock hours and bearings run.
  const double bearing = clock_angle_rad(first_clock(d)) + day.sun_off_window->si;
  return toward(day.sun_altitude->si, bearing);
}

std::optional<Direction> sun_by_place(const Description& d) {
  const auto place = place_of(d.daylight);
  const auto compass = compass_of(d);
  if (!place || !d.daylight.time || !compass) return std::nullopt;
  const SunPosition sun = sun_position(*place, *d.daylight.time);
  return toward(sun.apparent_altitude_rad, sun.azimuth_rad, *compass);
}

int sky_type_of(const DaylightSection& day) { return sky_type_named(day.sky).value_or(kTraditionalOvercast); }

/// The usual diffuse light by the sun's altitude; without a sun, or one too low, a round figure.
Illuminance diffuse_of(const DaylightSection& day, const std::optional<Direction>& to_sun) {
  if (day.outdoor) return *day.outdoor;
  if (!to_sun) return kUsualOutdoor;
  const Angle altitude = radians(altitude_of(*to_sun));
  return diffuse_horizontal_illuminance(weather_of_sky(sky_type_of(day)), altitude).value_or(lux(0.0));
}

std::optional<SunDisc> sun_disc_of(const DaylightSection& day, const std::optional<Direction>& to_sun) {
  if (!to_sun || to_sun->z() <= 0.0) return std::nullopt;
  const Weather weather = weather_of_sky(sky_type_of(day));
  const bool shines = day.sun ? *day.sun : weather != Weather::overcast;
  if (!shines) return std::nullopt;
  const Angle altitude = radians(altitude_of(*to_sun));
  const int day_number = day.time ? day_of_year(*day.time) : 80;  // without a date: near the mean distance
  const Weather usual = weather == Weather::overcast ? Weather::partly_cloudy : weather;
  const Illuminance normal = day.sun_illuminance
                                 ? *day.sun_illuminance
                                 : direct_normal_illuminance(usual, altitude, day_number).value_or(lux(0.0));
  return SunDisc{*to_sun, kMeanSunHalfAngle_rad, normal.si, usual_sun_colour(altitude)};
}

Skyline skyline_of(const Description& d) {
  const DaylightSection& day = d.daylight;
  if (day.skyline) return LevelSkyline{day.skyline->si};
  if (day.building_distance && day.building_height)
    return ParallelBuilding{day.building_distance->si, day.building_height->si, to_clock(first_clock(d))};
  if (day.skyline_profile.empty()) return OpenSkyline{};
  const Compass compass = compass_of(d).value_or(Compass{});
  SkylineProfile profile;
  for (const auto& [bearing, altitude] : day.skyline_profile) {
    const double from_y = full_turn(parse_bearing(bearing).value_or(Angle{}).si - compass.azimuth_of_y_rad);
    profile.points.push_back({from_y, parse_quantity<Angle>(altitude).value.value_or(Angle{}).si});
  }
  std::ranges::sort(profile.points, {}, &PolylinePoint::at);
  return profile;
}

}  // namespace

std::optional<Angle> parse_bearing(std::string_view text) {
  static constexpr std::array<std::string_view, 16> kNames{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                                           "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};
  std::string upper(text);
  std::ranges::transform(upper, upper.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  const auto named = std::ranges::find(kNames, std::string_view(upper));
  if (named != kNames.end()) return degrees(22.5 * static_cast<double>(named - kNames.begin()));
  const Parsed<Angle> angle = parse_quantity<Angle>(text);
  return angle.value ? std::optional(radians(full_turn(angle.value->si))) : std::nullopt;
}

std::optional<Compass> compass_of(const Description& d) {
  if (d.windows.empty()) return std::nullopt;
  const auto facing = parse_bearing(d.windows.front().facing);
  if (!facing) return std::nullopt;
  return Compass{full_turn(facing->si - clock_angle_rad(first_clock(d)))};
}

std::optional<Direction> sun_direction(const Description& d) {
  const auto by_angles = sun_by_angles(d);
  return by_angles ? by_angles : sun_by_place(d);
}

DaylitOutside daylit_outside(const Description& d) {
  const DaylightSection& day = d.daylight;
  const int type = sky_type_of(day);
  const auto to_sun = sun_direction(d);
  DaylitOutside outside;
  outside.sky.type = type;
  // A sun below the horizon still lights the sky from there; the model ends at the horizon.
  if (to_sun) outside.sky.to_sun = toward(std::max(0.0, altitude_of(*to_sun)), azimuth_of(*to_sun));
  outside.diffuse = diffuse_of(day, to_sun);
  outside.sky_colour = usual_sky_colour(type);
  outside.sun = sun_disc_of(day, to_sun);
  outside.skyline = skyline_of(d);
  outside.skyline_reflectance = grey(day.skyline_reflectance);
  outside.ground_reflectance = tinted(day.ground, day.ground_colour);
  return outside;
}

Outside outside_of(const Description& d) {
  return d.daylight.window_luminance ? even_outside(*d.daylight.window_luminance) : daylit(daylit_outside(d));
}

}  // namespace fillside
