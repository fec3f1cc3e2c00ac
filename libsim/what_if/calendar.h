// When the light at a table is good: every meter over the days of a year, always as a band between an
// overcast and a clear sky, with the hours in which the sun lies on the dish.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/light/sun_day.h"
#include "libsim/what_if/daylit_set.h"
#include "libsim/what_if/sun_on_dish.h"

namespace fillside {

/// A value with the half width of its 95 % interval.
struct Figure {
  double value = 0.0, half_width_95 = 0.0;
};
Figure figure_of(const Estimate& estimate);

/// All meters (in the order of DaylitSet::instruments) in one weather.
struct StepLight {
  std::vector<Figure> lx;
  std::optional<Figure> lit_to_shadow;  ///< patches of the food, else the dish's meters; nothing in the dark
};
struct CalendarStep {
  double minute = 0.0;  ///< from midnight on the calendar's clock
  double sun_altitude_rad = 0.0;
  bool sun_on_dish = false;
  StepLight overcast, clear;
};

/// The lower and the upper of the two weathers.
struct WeatherBand {
  double low, high;
};
WeatherBand ev100_range(const CalendarStep& step, std::size_t meter, ReadingKind kind);

struct CalendarDay {
  Instant date;
  SunDay sun;
  std::vector<DayStretch> sun_on_dish;  ///< under a clear sky
  std::vector<DayStretch> good;         ///< in both weathers: bright enough, and no sun on the dish
  std::vector<CalendarStep> steps;      ///< from midnight on
};

/// What a photographer wants of the light.
struct WantedExposure {
  FNumber aperture = f_number(5.6);
  int iso = 100;
  Duration slowest = seconds(1.0);
  /// EV at ISO 100 from which on the shutter is not slower.
  double least_ev100() const;
};

struct CalendarPlan {
  EarthPlace place{};
  int offset_min = 0;  ///< of the clock, all the year
  WantedExposure wanted{};
  double step_min = 30.0, sun_step_min = 2.0;
  bool find_good_hours = true;
  int threads = 0;
};

/// Reads a set day by day. The meter that exposure goes by is `exposure_meter` of DaylitSet's instruments.
class Calendar {
 public:
  Calendar(const DaylitSet& set, CalendarPlan plan);
  const CalendarPlan& plan() const { return plan_; }
  std::size_t exposure_meter() const { return exposure_meter_; }

  CalendarDay day(const SetFacing& facing, const Instant& date) const;
  /// The days in parallel, in the order of the dates; the same for any number of threads.
  std::vector<CalendarDay> days(const SetFacing& facing, const std::vector<Instant>& dates) const;
  /// Toward the sun in the set's own axes, refraction included; may point below the horizon.
  Direction to_sun(const SetFacing& facing, const Instant& date, double minute) const;

 private:
  bool sun_on_dish(const SetFacing& facing, const SunMoment& moment) const;
  bool bright_enough(const SetFacing& facing, const SunMoment& moment) const;
  CalendarStep step(const SetFacing& facing, const Instant& date, double minute) const;
  StepLight light(const SetFacing& facing, const SunMoment& moment, DayWeather weather) const;

  const DaylitSet& set_;
  CalendarPlan plan_;
  DishFootprint dish_;
  std::size_t exposure_meter_;
};

/// That date at a minute of its day, on its clock.
Instant at_minute(const Instant& date, double minute);
/// The dates of a year: every day of it, or one day of every month.
std::vector<Instant> every_day_of(int year, int offset_min);
std::vector<Instant> one_day_of_every_month(int year, int day, int offset_min);

}  // namespace fillside
