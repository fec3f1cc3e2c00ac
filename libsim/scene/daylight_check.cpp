#include <fmt/format.h>

#include "libsim/light/general_sky.h"
#include "libsim/light/horizon.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/fault_list.h"
#include "libsim/scene/wording.h"

namespace fillside {
namespace {

void check_sun_place(const FaultList& faults, const Description& d) {
  const DaylightSection& day = d.daylight;
  if (day.sun_altitude.has_value() != day.sun_off_window.has_value())
    faults.error(day.sun_altitude ? "sun_altitude" : "sun_off_window", "it says half of where the sun stands",
                 "give both sun_altitude and sun_off_window");
  if (day.latitude.has_value() != day.longitude.has_value())
    faults.error(day.latitude ? "latitude" : "longitude", "it says half of the place",
                 "give both latitude and longitude");
  if (day.time && (day.sun_altitude || day.sun_off_window))
    faults.error("time", "it says twice where the sun stands",
                 "give the time, or sun_altitude and sun_off_window");
  if (!day.time) return;
  if (!day.latitude && !day.longitude)
    faults.error("time", "it has a time and no place",
                 "give latitude and longitude, for example latitude = \"48.9 deg\"");
  if (!compass_of(d))
    faults.error("time", "the sun's way in is not known",
                 "say where the first window looks: facing = \"SW\" in [[window]]");
}

void check_sun(const FaultList& faults, const Description& d) {
  const auto to_sun = sun_direction(d);
  const bool below = to_sun && to_sun->z() <= 0.0;
  if (below && !d.daylight.outdoor)
    faults.error(d.daylight.time ? "time" : "sun_altitude",
                 fmt::format("the sun stands {:.1f} degrees below the horizon, where no usual figure holds",
                             -altitude_of(*to_sun) / kDegree),
                 "choose another hour, or give outdoor for the sky of dusk alone");
  else if (below)
    faults.warning(d.daylight.time ? "time" : "sun_altitude", "the sun is below the horizon",
                   "only the sky is counted");
  const int type = sky_type_named(d.daylight.sky).value_or(kTraditionalOvercast);
  if (!to_sun && depends_on_sun(type) && !d.daylight.window_luminance)
    faults.error("sky",
                 fmt::format("a {} sky looks different toward the sun, and the sun's place is not said",
                             sky_name(type)),
                 "give latitude, longitude and time, or sun_altitude and sun_off_window");
  if (!to_sun && (d.daylight.sun.value_or(false) || d.daylight.sun_illuminance))
    faults.error(d.daylight.sun ? "sun" : "sun_illuminance", "the sun's place is not said",
                 "give latitude, longitude and time, or sun_altitude and sun_off_window");
}

void check_skyline(const FaultList& faults, const DaylightSection& day) {
  if (day.building_distance.has_value() != day.building_height.has_value())
    faults.error(day.building_distance ? "building_distance" : "building_height",
                 "it says half of a building", "give both building_distance and building_height");
  const int kinds =
      (day.skyline ? 1 : 0) + (day.building_distance ? 1 : 0) + (day.skyline_profile.empty() ? 0 : 1);
  if (kinds > 1)
    faults.error(day.skyline ? "skyline" : "building_distance", "it has two skylines",
                 "give one of skyline, a building, or skyline_profile");
  for (const auto& [bearing, altitude] : day.skyline_profile) {
    if (!parse_bearing(bearing))
      faults.error("skyline_profile", fmt::format("{} is not a bearing", in_quotes(bearing)),
                   "write it as N, SW or \"210 deg\"");
    const Parsed<Angle> parsed = parse_quantity<Angle>(altitude);
    if (!parsed.value)
      faults.error("skyline_profile", parsed.fault, parsed.remedy);
    else if (parsed.value->si < 0.0 || parsed.value->si > 1.5)
      faults.error("skyline_profile", fmt::format("{} is no altitude", in_quotes(altitude)),
                   "it may be 0 to 85 deg");
  }
}

}  // namespace

void check_daylight(const Description& d, std::vector<Problem>& problems) {
  const FaultList faults(d.daylight, "daylight", problems);
  const std::size_t before = problems.size();
  check_skyline(faults, d.daylight);
  check_sun_place(faults, d);
  for (std::size_t i = 0; i < d.windows.size(); ++i) {
    const WindowSection& window = d.windows[i];
    if (window.facing.empty()) continue;
    const FaultList own(window, heading_text("window", window.name), problems);
    if (!parse_bearing(window.facing))
      own.error("facing", fmt::format("{} is not a compass direction", in_quotes(window.facing)),
                "write it as N, SW or \"210 deg\"");
    else if (i > 0)
      own.error("facing", "only the first window says where it looks", "the others follow from the room");
  }
  if (problems.size() == before) check_sun(faults, d);
}

}  // namespace fillside
