// When the light is good at this table: the day of the scene's time by the hour, every month, and the year in
// one picture.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/scene/daylight.h"
#include "libsim/writers/day_sheet.h"
#include "libsim/writers/hour_axis.h"
#include "libsim/writers/year_sheet.h"
#include "tools/calendar_answer.h"
#include "tools/report.h"
#include "tools/terminal.h"

namespace fillside::tools {
namespace {

constexpr int kListedDay = 21;  // near the solstices and equinoxes

bool knows_its_sun(const Description& d) {
  return d.daylight.latitude && d.daylight.longitude && d.daylight.time && compass_of(d).has_value();
}

CalendarPlan plan_of(const Reported& reported) {
  const Description& d = reported.description();
  CalendarPlan plan;
  plan.place = {d.daylight.latitude->si, d.daylight.longitude->si, 0.0};
  plan.offset_min = d.daylight.time->offset_min;
  plan.wanted = {d.camera.aperture, reported.arguments.iso, seconds(1.0)};
  plan.step_min = reported.arguments.step_min;
  plan.threads = reported.arguments.threads;
  return plan;
}

Instant date_of(const Description& d) {
  Instant date = *d.daylight.time;
  date.hour = date.minute = 0, date.second = 0.0;
  return date;
}

std::string stretches_text(const std::vector<DayStretch>& stretches) {
  std::string text;
  for (const DayStretch& each : stretches)
    text += fmt::format("{}{} to {}", text.empty() ? "" : ", ", clock_text(each.from_min),
                        clock_text(each.to_min));
  return text.empty() ? "-" : text;
}

PageTable months_table(const std::vector<CalendarDay>& months, const CalendarPlan& plan) {
  PageTable table{"Through the year", {{"day"}, {"good light"}, {"sun on the dish, clear sky"}}, {}, ""};
  for (const CalendarDay& day : months)
    table.rows.push_back({fmt::format("{} {}", day.date.day, month_name(day.date.month)),
                          stretches_text(day.good), stretches_text(day.sun_on_dish)});
  table.note = fmt::format(
      "Good: {} in either weather, and no sun on the dish. Usual outdoor levels; a real day is easily "
      "half or double.",
      wanted_text(plan.wanted));
  return table;
}

/// Every day of the year; for a picture the sun is followed in coarser steps than on the listed days.
PagePicture year_picture(const Reported& reported, const DaylitSet& set, CalendarPlan plan) {
  const Description& d = reported.description();
  const int year = d.daylight.time->year;
  plan.sun_step_min = 10.0;
  plan.find_good_hours = false;
  const Calendar calendar(set, plan);
  const std::size_t meter = calendar.exposure_meter();
  return {
      year_sheet(calendar.days(facing_of(d), every_day_of(year, plan.offset_min)),
                 {.title = fmt::format("The light in {}", year),
                  .note = fmt::format("{}, clock {} all the year. Colour: middle between an overcast and a "
                                      "clear sky.",
                                      place_text(plan.place), offset_text(plan.offset_min)),
                  .captions = {},
                  .meter = meter,
                  .kind = set.instruments()[meter].kind,
                  .least_ev100 = plan.wanted.least_ev100()}),
      fmt::format("Exposure values at the dish over the hours and dates of {}", year),
      "Dates across, the clock up. Hatched: sun on the dish under a clear sky."};
}

/// The middle steps of the day, while the sun is up.
std::vector<const CalendarStep*> steps_of_day(const CalendarDay& day) {
  std::vector<const CalendarStep*> steps;
  for (const CalendarStep& step : day.steps)
    if (step.sun_altitude_rad > 0.0) steps.push_back(&step);
  return steps;
}

PageCurves curves_of(const CalendarDay& day, std::size_t meter, ReadingKind kind, PagePicture fallback) {
  PageCurves curves{fmt::format("The dish on {}, by the dome", date_text(day.date)),
                    "time",
                    "EV at ISO 100",
                    true,
                    {},
                    {},
                    std::move(fallback)};
  curves.curves = {{"darker of overcast and clear", {}}, {"lighter", {}}};
  for (const CalendarStep* step : steps_of_day(day)) {
    const WeatherBand band = ev100_range(*step, meter, kind);
    curves.x.push_back(step->minute);
    curves.curves[0].y.push_back(band.low);
    curves.curves[1].y.push_back(band.high);
  }
  return curves;
}

PageTable hours_table(const CalendarDay& day, std::size_t meter, ReadingKind kind) {
  PageTable table{fmt::format("{} by the hour", date_text(day.date)),
                  {{"time"}, {"EV at ISO 100", PlainTable::Align::right}, {"sun on the dish"}},
                  {},
                  ""};
  for (const CalendarStep* step : steps_of_day(day)) {
    if (std::fmod(step->minute, 60.0) != 0.0) continue;
    const WeatherBand band = ev100_range(*step, meter, kind);
    table.rows.push_back({clock_text(step->minute), fmt::format("{:.1f} to {:.1f}", band.low, band.high),
                          step->sun_on_dish ? "yes" : "no"});
  }
  return table;
}

}  // namespace

std::optional<PageSection> calendar_section(const Reported& reported) {
  const Description& d = reported.description();
  if (!knows_its_sun(d)) return std::nullopt;
  Effort effort = reported.effort;
  effort.precision = std::max(effort.precision, kCalendarPrecision);
  ProgressBar bar("following the sun", reported.arguments.quiet);
  const DaylitSet set(d, effort, bar.callback());
  const Calendar calendar(set, plan_of(reported));
  const std::size_t meter = calendar.exposure_meter();
  const ReadingKind kind = set.instruments()[meter].kind;
  const SetFacing facing = facing_of(d);
  const CalendarDay day = calendar.day(facing, date_of(d));
  const std::string wanted = wanted_text(calendar.plan().wanted);
  PagePicture strip{day_sheet(day, {.title = fmt::format("The light on {}", date_text(day.date)),
                                    .note = fmt::format("Between an overcast and a clear sky. {}, clock {}.",
                                                        place_text(calendar.plan().place),
                                                        offset_text(calendar.plan().offset_min)),
                                    .captions = {},
                                    .meter = meter,
                                    .kind = kind,
                                    .least_ev100 = calendar.plan().wanted.least_ev100(),
                                    .least_text = wanted}),
                    "Exposure values over the day", ""};
  PageSection section{"day", "The day", "Always a band between an overcast and a clear sky.", {}};
  section.blocks.push_back(curves_of(day, meter, kind, std::move(strip)));
  section.blocks.push_back(hours_table(day, meter, kind));
  section.blocks.push_back(year_picture(reported, set, calendar.plan()));
  section.blocks.push_back(months_table(
      calendar.days(facing,
                    one_day_of_every_month(d.daylight.time->year, kListedDay, calendar.plan().offset_min)),
      calendar.plan()));
  return section;
}

}  // namespace fillside::tools
