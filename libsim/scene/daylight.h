// From [daylight] as written to what is outside the window: where the sun stands, how bright sun and sky are,
// what stands before them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/base/problem.h"
#include "libsim/light/horizon.h"
#include "libsim/light/outside.h"
#include "libsim/scene/description.h"

namespace fillside {

/// The level of the sky where neither it nor the place of a sun is said.
inline constexpr Illuminance kUsualOutdoor = lux(10000.0);

/// Compass bearing of "N", "SW", "NNE" (any case) or "210 deg", clockwise from north; nothing for other
/// texts.
std::optional<Angle> parse_bearing(std::string_view text);

/// How the set lies on the compass, from the first window's facing; nothing when it is not said.
std::optional<Compass> compass_of(const Description& description);

/// Where the sun stands in the set's own axes (with refraction), from place and time or from angles; nothing
/// when neither is said. May lie below the horizon.
std::optional<Direction> sun_direction(const Description& description);

/// What is outside the windows, with usual figures where the description is silent. It must have passed
/// check_daylight.
Outside outside_of(const Description& description);

/// Half a place or time, bearings that are none, two suns, a skyline that is two; and as a warning, a sun
/// that is below the horizon (only the sky is counted then).
void check_daylight(const Description& description, std::vector<Problem>& problems);

}  // namespace fillside
