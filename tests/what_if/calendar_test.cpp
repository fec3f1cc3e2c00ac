#include "libsim/what_if/calendar.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/view/exposure.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::IsEmpty;

Description facing_set(const std::string& facing) {
  return small_set(kFood, {"window.window.facing=" + facing});
}

const Effort kRough{stops(0.2), {}, 1, 0};

struct Asked {
  std::string facing = "S";
  EarthPlace place{48.9 * kDegree, 0.0, 0.0};
  Instant date{2026, 3, 20, 0, 0, 0.0, 0};
  WantedExposure wanted{};
};
CalendarDay day_of(const Asked& asked) {
  const Description d = facing_set(asked.facing);
  const DaylitSet set(d, kRough);
  return Calendar(set, {.place = asked.place, .wanted = asked.wanted, .threads = 1})
      .day(facing_of(d), asked.date);
}

double minute_of(const Instant& at) { return 60.0 * at.hour + at.minute + at.second / 60.0; }

TEST(Calendar, a_north_window_in_middle_latitudes_has_no_sun_on_the_dish_in_winter) {
  for (const int month : {11, 12, 1, 2}) {
    const CalendarDay day = day_of({.facing = "N", .date = {2026, month, 21, 0, 0, 0.0, 0}});
    EXPECT_THAT(day.sun_on_dish, IsEmpty()) << month;
    EXPECT_FALSE(day.good.empty());
  }
}

TEST(Calendar, a_south_window_has_sun_around_noon_in_winter_as_long_before_as_after) {
  const CalendarDay day = day_of({.date = {2026, 12, 21, 0, 0, 0.0, 0}});
  ASSERT_EQ(day.sun_on_dish.size(), 1u);
  const double noon = minute_of(*day.sun.transit);
  EXPECT_NEAR(noon - day.sun_on_dish[0].from_min, day.sun_on_dish[0].to_min - noon, 1.0);
}

// On the equator at the equinox the sun goes from east to west through the zenith: what an east window has
// before noon, a west window has after it.
TEST(Calendar, east_before_noon_is_west_after_noon_on_the_equator_at_the_equinox) {
  const EarthPlace equator{};
  const CalendarDay east = day_of({.facing = "E", .place = equator}),
                    west = day_of({.facing = "W", .place = equator});
  ASSERT_EQ(east.sun_on_dish.size(), 1u);
  ASSERT_EQ(west.sun_on_dish.size(), 1u);
  const double noon = minute_of(*east.sun.transit);
  EXPECT_NEAR(noon - east.sun_on_dish[0].from_min, west.sun_on_dish[0].to_min - noon, 2.0);
  EXPECT_NEAR(noon - east.sun_on_dish[0].to_min, west.sun_on_dish[0].from_min - noon, 2.0);
}

TEST(Calendar, good_hours_and_hours_with_sun_on_the_dish_do_not_overlap) {
  const CalendarDay day = day_of({.date = {2026, 2, 21, 0, 0, 0.0, 0}});
  ASSERT_FALSE(day.sun_on_dish.empty());
  for (const DayStretch& good : day.good)
    for (const DayStretch& sun : day.sun_on_dish)
      EXPECT_TRUE(good.to_min <= sun.from_min + 0.1 || sun.to_min <= good.from_min + 0.1);
}

TEST(Calendar, at_a_good_hours_ends_the_wanted_exposure_is_just_reached) {
  const WantedExposure wanted{.iso = 100, .slowest = seconds(0.25)};
  const Asked asked{.facing = "N", .date = {2026, 1, 21, 0, 0, 0.0, 0}, .wanted = wanted};
  const CalendarDay day = day_of(asked);
  ASSERT_EQ(day.good.size(), 1u);
  const Description d = facing_set("N");
  const DaylitSet set(d, kRough);
  const std::size_t meter = *set.index_of(kDishDome);
  for (const double minute : {day.good[0].from_min, day.good[0].to_min}) {
    double least = 1e9;
    for (const DayWeather weather : kDayWeathers)
      least = std::min(
          least, ev100_of_dome(set.read(facing_of(d), SunMoment(asked.place, at_minute(asked.date, minute)),
                                        weather)[meter])
                     .value());
    EXPECT_NEAR(least, wanted.least_ev100(), 0.02);
  }
}

TEST(Calendar, more_speed_or_a_slower_shutter_never_makes_the_good_hours_shorter) {
  double before = 0.0;
  for (const int iso : {100, 400, 1600}) {
    double sum = 0.0;
    for (const DayStretch& good :
         day_of({.facing = "N", .wanted = {.iso = iso, .slowest = seconds(1.0 / 60.0)}}).good)
      sum += good.length_min();
    EXPECT_GE(sum, before) << iso;
    before = sum;
  }
  EXPECT_GT(before, 0.0);
}

// Hand-worked: 5.6 squared is 31.4, its log2 4.97; ISO 400 is two stops more, 1/60 s 5.91 less.
TEST(Calendar, the_least_exposure_value_follows_from_the_settings) {
  EXPECT_NEAR(WantedExposure{}.least_ev100(), 4.97, 0.01);
  EXPECT_NEAR((WantedExposure{f_number(5.6), 400, seconds(1.0 / 60.0)}).least_ev100(), 4.97 + 5.91 - 2.0,
              0.01);
}

TEST(Calendar, in_the_polar_night_there_is_nothing_and_in_the_polar_day_there_is_light_at_midnight) {
  const EarthPlace north{78.0 * kDegree, 0.0, 0.0};
  const CalendarDay night = day_of({.place = north, .date = {2026, 12, 21, 0, 0, 0.0, 0}});
  EXPECT_EQ(night.sun.kind, DayKind::polar_night);
  EXPECT_THAT(night.good, IsEmpty());
  EXPECT_THAT(night.sun_on_dish, IsEmpty());
  const CalendarDay day = day_of({.place = north, .date = {2026, 6, 21, 0, 0, 0.0, 0}});
  EXPECT_EQ(day.sun.kind, DayKind::polar_day);
  EXPECT_GT(day.steps.front().clear.lx.front().value, 0.0);
}

// Over a summer day of 16 hours the sun comes to every side; over all four sides together the dish has no
// more of it than the day is long, and the sunny sides have more than the north.
TEST(Calendar, the_four_facings_share_the_day) {
  const Description d = facing_set("S");
  const DaylitSet set(d, kRough);
  const Calendar calendar(set, {.place = {48.9 * kDegree, 0.0, 0.0}, .threads = 1});
  double all = 0.0, north = 0.0;
  for (int i = 0; i < 4; ++i) {
    const CalendarDay day = calendar.day(facing_of(d, degrees(90.0 * i)), {2026, 4, 21, 0, 0, 0.0, 0});
    for (const DayStretch& each : day.sun_on_dish) (i == 0 ? north : all) += each.length_min();
  }
  EXPECT_GT(all, north);
  EXPECT_GT(all, 60.0);
  EXPECT_LT(all + north, 2.0 * 14.0 * 60.0);  // a direction shines in at two sides at most
}

TEST(Calendar, days_are_the_same_for_one_and_two_threads) {
  const Description d = facing_set("S");
  const DaylitSet set(d, kRough);
  const auto dates = one_day_of_every_month(2026, 31, 60);
  const auto days = [&](int threads) {
    return Calendar(set, {.place = {0.8, 0.1, 0.0}, .step_min = 120.0, .threads = threads})
        .days(facing_of(d), dates);
  };
  const auto one = days(1), two = days(2);
  ASSERT_EQ(one.size(), 12u);
  EXPECT_EQ(one[1].date.day, 28);
  for (std::size_t i = 0; i < one.size(); ++i)
    for (std::size_t s = 0; s < one[i].steps.size(); ++s)
      EXPECT_EQ(one[i].steps[s].clear.lx[0].value, two[i].steps[s].clear.lx[0].value);
}

TEST(StretchesWhere, finds_ends_to_a_second_and_open_ends) {
  const auto found = stretches_where({0.0, 100.0}, 2.0,
                                     [](double m) { return m < 10.3 || (m > 40.7 && m < 55.2) || m > 99.0; });
  ASSERT_EQ(found.size(), 3u);
  EXPECT_EQ(found[0].from_min, 0.0);
  EXPECT_NEAR(found[0].to_min, 10.3, 1.0 / 60.0);
  EXPECT_NEAR(found[1].from_min, 40.7, 1.0 / 60.0);
  EXPECT_NEAR(found[1].to_min, 55.2, 1.0 / 60.0);
  EXPECT_EQ(found[2].to_min, 100.0);
}

// By hand: the window's glass stands 50 cm to the left; with the sun square to it and 45 degrees up, the
// shadow of each of its edges falls as far to the right of the glass as the edge is high over the table.
TEST(SunPatches, are_the_openings_outline_along_the_sun) {
  const Description d = small_set(kFood + "[daylight]\nwindow_luminance = \"1 cd/m2\"\n");
  const Scene scene = scene_of(d);
  const Rectangle& opening = rectangle_of(scene.emitters().front());
  const Direction to_sun = (Direction(-1, 0, 0) + Direction::UnitZ()).normalized();
  const auto patches = sun_patches_on(scene, {Eigen::Vector2d(-9, -9), Eigen::Vector2d(9, 9)}, to_sun);
  ASSERT_EQ(patches.size(), 1u);
  double right = -9.0;
  for (const Eigen::Vector2d& corner : patches[0]) right = std::max(right, corner.x());
  EXPECT_NEAR(right, opening.centre.x() + opening.centre.z() + opening.half_v.norm(), 1e-9);
  const auto cut_off =
      sun_patches_on(scene, {Eigen::Vector2d(-0.1, -0.1), Eigen::Vector2d(0.1, 0.1)}, to_sun);
  for (const TableOutline& outline : cut_off)
    for (const Eigen::Vector2d& corner : outline) EXPECT_LE(corner.cwiseAbs().maxCoeff(), 0.1 + 1e-12);
  EXPECT_THAT(sun_patches_on(scene, {Eigen::Vector2d(-9, -9), Eigen::Vector2d(9, 9)}, toward(0.5, 0.5 * kPi)),
              IsEmpty());
}

}  // namespace
}  // namespace fillside
