#include "libsim/what_if/calendar.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/parallel.h"
#include "libsim/view/exposure.h"

namespace fillside {
namespace {

constexpr double kDay_min = 24.0 * 60.0;

Direction direction_to(const SetFacing& facing, const SunPosition& sun) {
  return toward(sun.apparent_altitude_rad, sun.azimuth_rad, facing.compass);
}

double minute_of(const Instant& instant) {
  return 60.0 * instant.hour + instant.minute + instant.second / 60.0;
}

/// When the sun is up, as one stretch of the day; nothing in the polar night. Around midnight in high summer,
/// when the sun sets after it has risen on the same date, the whole day.
std::optional<DayStretch> sunlit_part(const SunDay& day) {
  if (day.kind == DayKind::polar_night) return std::nullopt;
  const double rise = day.sunrise ? minute_of(*day.sunrise) : 0.0;
  const double set = day.sunset ? minute_of(*day.sunset) : kDay_min;
  return rise < set ? DayStretch{rise, set} : DayStretch{0.0, kDay_min};
}

std::optional<Figure> lit_to_shadow(const DaylitSet& set, const std::vector<Estimate>& lx) {
  for (const auto& [lit, shadow] : {std::pair{kPatchLit, kPatchShadow}, {kDishWindow, kDishAway}}) {
    const auto a = set.index_of(lit), b = set.index_of(shadow);
    if (!a || !b) continue;
    if (!(lx[*b].value() > 0.0)) return std::nullopt;
    return figure_of(lx[*a] / lx[*b]);
  }
  return std::nullopt;
}

double ev100(double lx, ReadingKind kind) {
  const Estimate exact(lx);
  return (kind == ReadingKind::dome ? ev100_of_dome(exact) : ev100_of_flat(exact)).value();
}

}  // namespace

Figure figure_of(const Estimate& estimate) { return {estimate.value(), estimate.half_width_95()}; }

WeatherBand ev100_range(const CalendarStep& step, std::size_t meter, ReadingKind kind) {
  const double overcast = ev100(step.overcast.lx[meter].value, kind),
               clear = ev100(step.clear.lx[meter].value, kind);
  return {std::min(overcast, clear), std::max(overcast, clear)};
}

double WantedExposure::least_ev100() const {
  return std::log2(aperture.si * aperture.si / slowest.si) - std::log2(iso / 100.0);
}

Instant at_minute(const Instant& date, double minute) {
  Instant instant = date;
  const double second = std::round(std::min(60.0 * minute, 86399.999) * 1e3) / 1e3;
  instant.hour = static_cast<int>(second / 3600.0);
  instant.minute = static_cast<int>((second - 3600.0 * instant.hour) / 60.0);
  instant.second = std::max(0.0, second - 3600.0 * instant.hour - 60.0 * instant.minute);
  return instant;
}

std::vector<Instant> every_day_of(int year, int offset_min) {
  std::vector<Instant> dates;
  for (int month = 1; month <= 12; ++month)
    for (int day = 1; day <= days_in_month(year, month); ++day)
      dates.push_back({year, month, day, 0, 0, 0.0, offset_min});
  return dates;
}

std::vector<Instant> one_day_of_every_month(int year, int day, int offset_min) {
  std::vector<Instant> dates;
  for (int month = 1; month <= 12; ++month)
    dates.push_back({year, month, std::min(day, days_in_month(year, month)), 0, 0, 0.0, offset_min});
  return dates;
}

Calendar::Calendar(const DaylitSet& set, CalendarPlan plan)
    : set_(set), plan_(plan), dish_(set.scene()), exposure_meter_(set.index_of(kDishDome).value_or(0)) {}

Direction Calendar::to_sun(const SetFacing& facing, const Instant& date, double minute) const {
  return direction_to(facing, sun_position(plan_.place, at_minute(date, minute)));
}

bool Calendar::sun_on_dish(const SetFacing& facing, const SunMoment& moment) const {
  const Direction to_sun = direction_to(facing, moment.sun);
  return facing.outside.sun_is_free(to_sun) && dish_.in_sun(set_.scene(), to_sun);
}

bool Calendar::bright_enough(const SetFacing& facing, const SunMoment& moment) const {
  const std::size_t meter[] = {exposure_meter_};
  const ReadingKind kind = set_.instruments()[exposure_meter_].kind;
  return std::ranges::all_of(kDayWeathers, [&](DayWeather weather) {
    const double lx = set_.read(facing, moment, weather, meter).front().value();
    return lx > 0.0 && ev100(lx, kind) >= plan_.wanted.least_ev100();
  });
}

StepLight Calendar::light(const SetFacing& facing, const SunMoment& moment, DayWeather weather) const {
  const std::vector<Estimate> lx = set_.read(facing, moment, weather);
  StepLight light;
  for (const Estimate& each : lx) light.lx.push_back(figure_of(each));
  light.lit_to_shadow = lit_to_shadow(set_, lx);
  return light;
}

CalendarStep Calendar::step(const SetFacing& facing, const Instant& date, double minute) const {
  const SunMoment moment(plan_.place, at_minute(date, minute));
  return {minute, moment.sun.apparent_altitude_rad, sun_on_dish(facing, moment),
          light(facing, moment, DayWeather::overcast), light(facing, moment, DayWeather::clear)};
}

CalendarDay Calendar::day(const SetFacing& facing, const Instant& date) const {
  CalendarDay day{date, sun_day(plan_.place, date), {}, {}, {}};
  const auto moment = [&](double minute) { return SunMoment(plan_.place, at_minute(date, minute)); };
  if (const auto sunlit = sunlit_part(day.sun)) {
    day.sun_on_dish = stretches_where(*sunlit, plan_.sun_step_min,
                                      [&](double minute) { return sun_on_dish(facing, moment(minute)); });
    if (plan_.find_good_hours)
      day.good = stretches_where(*sunlit, std::min(plan_.step_min, 15.0), [&](double minute) {
        const SunMoment now = moment(minute);
        return !sun_on_dish(facing, now) && bright_enough(facing, now);
      });
  }
  for (double minute = 0.0; minute < kDay_min; minute += plan_.step_min)
    day.steps.push_back(step(facing, date, minute));
  return day;
}

std::vector<CalendarDay> Calendar::days(const SetFacing& facing, const std::vector<Instant>& dates) const {
  std::vector<CalendarDay> days(dates.size());
  parallel_for(dates.size(), plan_.threads, [&](std::size_t i) { days[i] = day(facing, dates[i]); });
  return days;
}

}  // namespace fillside
