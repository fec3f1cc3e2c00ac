// When the sun rises, stands highest and sets on one day of the calendar, or that it does not.
#pragma once

#include <optional>

#include "libsim/light/sun_position.h"

namespace fillside {

enum class DayKind { rises_or_sets, polar_day, polar_night };

struct SunDay {
  DayKind kind;
  std::optional<Instant> sunrise;  ///< the first of the day; none when the sun only sets, or does neither
  std::optional<Instant> transit;  ///< highest, due south or north; none on a day that begins just after one
                                   ///< noon and ends just before the next
  std::optional<Instant> sunset;   ///< the last of the day
};

/// The day from midnight to midnight on the clock of `date` (its time of day is ignored, its offset kept).
/// Sunrise and sunset: the upper rim on a level horizon at sea level, the middle 50' below it without air
/// (34' refraction, 16' radius; Meeus, Astronomical Algorithms, chapter 15). To about a second; weather moves
/// the real ones by a minute or so, and more near the polar circles. A stay above or below the horizon
/// shorter than half an hour that avoids noon and midnight may be missed.
SunDay sun_day(const EarthPlace& place, const Instant& date);

}  // namespace fillside
