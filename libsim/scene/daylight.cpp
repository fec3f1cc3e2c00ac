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

DaylightFigures figures_of(const DaylightSection& day) {
  DaylightFigures figures;
  figures.diffuse_horizontal = day.outdoor;
  figures.direct_normal = day.sun_illuminance;
  if (day.sun && !*day.sun) figures.direct_normal = lux(0.0);
  figures.ground_reflectance = tinted(day.ground, day.ground_colour);
  return figures;
}

/// A sky alone: without a place for the sun, or with the sun below the horizon, where only a measured level
/// holds.
Daylight sky_alone(const DaylightSection& day, const std::optional<Direction>& to_sun) {
  const int type = sky_type_of(day);
  GeneralSky sky{.type = type};
  // A sun below the horizon still lights the sky from there; the model ends at the horizon.
  if (to_sun) sky.to_sun = toward(0.0, azimuth_of(*to_sun));
  const Illuminance diffuse = day.outdoor.value_or(kUsualOutdoor);
  const Rgb colour = usual_sky_colour(type);
  return {sky, colour * zenith_luminance(sky, diffuse).si, std::nullopt,
          tinted(day.ground, day.ground_colour) * colour * (diffuse.si / kPi)};
}

/// Under a sun whose place is known. A sun that is said to shine through an overcast sky takes the usual
/// figure of a partly cloudy one.
std::optional<Daylight> sunlit(const Description& d, const Direction& to_sun) {
  constexpr int kNearMeanDistance = 80;  // 21 March, for a sun placed by its angles
  const DaylightSection& day = d.daylight;
  const int number = day.time ? day_of_year(*day.time) : kNearMeanDistance;
  DaylightFigures figures = figures_of(day);
  if (day.sun.value_or(false) && !figures.direct_normal &&
      weather_of_sky(sky_type_of(day)) == Weather::overcast)
    figures.direct_normal =
        direct_normal_illuminance(Weather::partly_cloudy, radians(altitude_of(to_sun)), number);
  SunPosition position{};
  position.altitude_rad = position.apparent_altitude_rad = altitude_of(to_sun);
  position.azimuth_rad = azimuth_of(to_sun);
  position.distance_au = 1.0;
  return daylight_by(position, number, sky_type_of(day), {}, figures);
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
  std::ranges::transform(upper, upper.begin(),
                         [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
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

Outside outside_of(const Description& d) {
  if (d.daylight.window_luminance) return even_outside(*d.daylight.window_luminance);
  const auto to_sun = sun_direction(d);
  const auto light = to_sun ? sunlit(d, *to_sun) : std::nullopt;
  return daylit(light ? *light : sky_alone(d.daylight, to_sun), skyline_of(d),
                grey(d.daylight.skyline_reflectance));
}

}  // namespace fillside
