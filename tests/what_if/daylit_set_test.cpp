// A set by its daylight coefficients against the same set measured at that very hour.
#include "libsim/what_if/daylit_set.h"

#include <gtest/gtest.h>

#include "libsim/scene/daylight.h"
#include "libsim/what_if/set_reading.h"
#include "tests/base/dice.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

const std::string kPlace = R"(
[daylight]
latitude = "48.9 deg"
longitude = "2.3 deg"
)";

Description placed_set(const std::string& facing, const std::vector<std::string>& more = {}) {
  std::vector<std::string> edits{"window.window.facing=" + facing};
  edits.insert(edits.end(), more.begin(), more.end());
  return small_set(kFood + kPlace, edits);
}

EarthPlace place_of(const Description& d) { return {d.daylight.latitude->si, d.daylight.longitude->si, 0.0}; }

struct Hour {
  std::string time;
  DayWeather weather;
};

SetReading at_once(const Description& set, const Hour& hour) {
  Description d = set;
  d.daylight.sky = hour.weather == DayWeather::clear ? "clear" : "overcast";
  d.daylight.time = parse_instant(hour.time);
  return read_set(d, scene_of(d), {stops(0.02), {}, 5, 0});
}

/// How far the two may be apart: four standard errors and what cutting the outside in patches costs.
testing::AssertionResult agree(const DaylitSet& set, const Description& d, const Hour& hour,
                               double patches_cost) {
  const SetReading reading = at_once(d, hour);
  const auto lx = set.read(facing_of(d), SunMoment(place_of(d), *parse_instant(hour.time)), hour.weather);
  for (std::size_t i = 0; i < lx.size(); ++i) {
    const Estimate &a = lx[i], &b = reading.readings[i].total_lx;
    const double bound = 4.0 * std::hypot(a.standard_error(), b.standard_error()) + patches_cost * b.value();
    if (!(std::abs(a.value() - b.value()) < bound))
      return testing::AssertionFailure() << reading.readings[i].name << ' ' << hour.time << ": " << a.value()
                                         << " +- " << a.standard_error() << " by patches, " << b.value()
                                         << " +- " << b.standard_error() << " at once";
  }
  return testing::AssertionSuccess();
}

const Effort kEffort{stops(0.01), {}, 3, 0};

TEST(DaylitSet, agrees_with_the_set_measured_under_an_overcast_sky_within_one_per_cent) {
  const Description d = placed_set("W");
  const DaylitSet set(d, kEffort);
  for (const std::string time :
       {"2026-01-15T09:40:00+01:00", "2026-06-21T13:00:00+01:00", "2026-09-05T18:10:00+01:00"})
    EXPECT_TRUE(agree(set, d, {time, DayWeather::overcast}, 0.01));
}

TEST(DaylitSet, agrees_under_a_clear_sky_whose_sun_stands_behind_the_house_within_two_per_cent) {
  const Description d = placed_set("W");
  const DaylitSet set(d, kEffort);
  for (const std::string time :
       {"2026-02-03T10:20:00+01:00", "2026-05-11T08:00:00+01:00", "2026-07-30T11:10:00+01:00"})
    EXPECT_TRUE(agree(set, d, {time, DayWeather::clear}, 0.02));
}

TEST(DaylitSet, agrees_where_the_sun_comes_in_within_what_its_spread_patch_costs) {
  const Description d = placed_set("W");
  const DaylitSet set(d, kEffort);
  for (const std::string time :
       {"2026-03-21T15:30:00+01:00", "2026-06-21T17:05:00+01:00", "2026-09-12T16:20:00+01:00"})
    EXPECT_TRUE(agree(set, d, {time, DayWeather::clear}, 0.15));
}

TEST(DaylitSet, agrees_behind_a_curtain_that_spreads_everything_within_two_per_cent) {
  const Description d =
      placed_set("W", {"window.window.curtain=white cotton sheet", "window.window.curtain_direct=0",
                       "window.window.curtain_diffuse=0.5", "window.window.curtain_reflectance=0.4"});
  const DaylitSet set(d, kEffort);
  for (const Hour& hour : {Hour{"2026-03-21T15:30:00+01:00", DayWeather::clear},
                           {"2026-06-21T10:00:00+01:00", DayWeather::clear},
                           {"2026-06-21T10:00:00+01:00", DayWeather::overcast}})
    EXPECT_TRUE(agree(set, d, hour, 0.02));
}

TEST(DaylitSet, agrees_with_a_building_before_the_window_within_three_per_cent) {
  const Description d = placed_set("E", {"daylight.building_distance=10m", "daylight.building_height=8m"});
  const DaylitSet set(d, kEffort);
  for (const Hour& hour : {Hour{"2026-04-02T16:00:00+01:00", DayWeather::clear},
                           {"2026-04-02T08:00:00+01:00", DayWeather::overcast}})
    EXPECT_TRUE(agree(set, d, hour, 0.03));
}

/// The two cost bounds of the tests above, by whether the sun looks in through the window.
double stated_bound(const Description& d, const Hour& hour) {
  if (hour.weather == DayWeather::overcast) return 0.02;
  const SunPosition sun = sun_position(place_of(d), *parse_instant(hour.time));
  const Direction to_sun = toward(sun.apparent_altitude_rad, sun.azimuth_rad, *compass_of(d));
  return to_sun.dot(to_clock(d.windows.front().clock)) > 0.0 ? 0.15 : 0.02;
}

TEST(DaylitSet, agrees_at_fifty_random_hours_within_error_bars_and_the_stated_bound) {
  const Description d = placed_set("SW");
  const DaylitSet set(d, kEffort);
  tests::Dice dice(20);
  for (int read = 0; read < 50;) {
    Instant instant{.year = 2026, .offset_min = 60};
    instant.month = 1 + static_cast<int>(12.0 * dice.throw_one());
    instant.day = 1 + static_cast<int>(28.0 * dice.throw_one());
    instant.hour = static_cast<int>(24.0 * dice.throw_one());
    instant.minute = static_cast<int>(60.0 * dice.throw_one());
    const DayWeather weather = dice.throw_one() < 0.5 ? DayWeather::clear : DayWeather::overcast;
    if (sun_position(place_of(d), instant).altitude_rad < 5.0 * kDegree) continue;  // below, usual levels end
    const Hour hour{to_text(instant), weather};
    EXPECT_TRUE(agree(set, d, hour, stated_bound(d, hour)));
    ++read;
  }
}

TEST(DaylitSet, turned_on_the_compass_reads_as_the_set_that_is_written_that_way) {
  const Description west = placed_set("W"), north = placed_set("N");
  const DaylitSet one(west, kEffort), other(north, kEffort);
  const SunMoment moment(place_of(west), *parse_instant("2026-05-02T14:00:00+01:00"));
  const auto a = one.read(facing_of(west, degrees(0.0)), moment, DayWeather::clear);
  const auto b = other.read(facing_of(north), moment, DayWeather::clear);
  for (std::size_t i = 0; i < a.size(); ++i) EXPECT_DOUBLE_EQ(a[i].value(), b[i].value());
}

TEST(DaylitSet, is_dark_while_the_sun_is_down) {
  const Description d = placed_set("W");
  const DaylitSet set(d, {stops(0.5), {}, 1, 0});
  for (const DayWeather weather : kDayWeathers)
    for (const Estimate& lx :
         set.read(facing_of(d), SunMoment(place_of(d), *parse_instant("2026-01-01T02:00:00+01:00")), weather))
      EXPECT_EQ(lx.value(), 0.0);
}

}  // namespace
}  // namespace fillside
