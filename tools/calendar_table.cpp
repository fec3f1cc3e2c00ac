#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/view/exposure.h"
#include "libsim/writers/hour_axis.h"
#include "libsim/writers/plain_table.h"
#include "tools/calendar_answer.h"
#include "tools/open_scene.h"

namespace fillside::tools {
namespace {

using enum PlainTable::Align;

std::string stretch_text(const DayStretch& stretch) {
  return clock_text(stretch.from_min) + " to " + clock_text(stretch.to_min);
}

std::string stretches_text(const std::vector<DayStretch>& stretches) {
  std::string text;
  for (const DayStretch& each : stretches) text += (text.empty() ? "" : ", ") + stretch_text(each);
  return text.empty() ? "-" : text;
}

std::string range_text(const WeatherBand& range) {
  return std::isfinite(range.low) ? fmt::format("{:.1f} to {:.1f}", range.low, range.high) : "dark";
}

/// The step at that hour, the band of the exposure meter in it; "dark" while the sun is down.
std::string ev_at(const CalendarAnswer& answer, const CalendarDay& day, int hour) {
  const std::size_t meter = answer.calendar.exposure_meter();
  const auto step =
      std::ranges::find_if(day.steps, [&](const CalendarStep& s) { return s.minute >= 60.0 * hour; });
  if (step == day.steps.end()) return "-";
  return range_text(ev100_range(*step, meter, answer.set.instruments()[meter].kind));
}

std::string sun_day_text(const SunDay& sun, bool rise) {
  if (sun.kind == DayKind::polar_day) return rise ? "up all day" : "";
  if (sun.kind == DayKind::polar_night) return rise ? "does not rise" : "";
  const auto& at = rise ? sun.sunrise : sun.sunset;
  return at ? clock_text(60.0 * at->hour + at->minute + at->second / 60.0) : "-";
}

std::string month_rows(const CalendarAnswer& answer, const FacedCalendar& faced) {
  PlainTable table{{{"day"},
                    {"sunrise", right},
                    {"sunset", right},
                    {"good light"},
                    {"EV at 9:00"},
                    {"12:00"},
                    {"15:00"},
                    {"sun on the dish (clear sky)"}},
                   {},
                   ""};
  for (const CalendarDay& day : faced.months)
    table.rows.push_back({fmt::format("{:>2} {}", day.date.day, month_name(day.date.month)),
                          sun_day_text(day.sun, true), sun_day_text(day.sun, false), stretches_text(day.good),
                          ev_at(answer, day, 9), ev_at(answer, day, 12), ev_at(answer, day, 15),
                          stretches_text(day.sun_on_dish)});
  return to_text(table);
}

/// "1/60 s", "2 s".
std::string shutter_text(Duration shutter) {
  return shutter.si < 1.0 ? fmt::format("1/{:.3g} s", 1.0 / shutter.si) : fmt::format("{:.3g} s", shutter.si);
}

std::string lx_text(double overcast, double clear) {
  return fmt::format("{:.0f} to {:.0f}", std::min(overcast, clear), std::max(overcast, clear));
}

std::string ratio_text(const CalendarStep& step) {
  if (!step.overcast.lit_to_shadow || !step.clear.lit_to_shadow) return "-";
  const double a = step.overcast.lit_to_shadow->value, b = step.clear.lit_to_shadow->value;
  return fmt::format("{:.1f} to {:.1f}", std::min(a, b), std::max(a, b));
}

/// Where the sun's patch lies on the table, in cm from the dish.
std::string patch_text(const CalendarAnswer& answer, const FacedCalendar& faced, const CalendarDay& day,
                       double minute) {
  const Direction to_sun = answer.calendar.to_sun(faced.facing, day.date, minute);
  if (!faced.facing.outside.sun_is_free(to_sun)) return "-";
  std::string text;
  for (const TableOutline& outline :
       sun_patches_on(answer.set.scene(), table_corners(answer.description), to_sun)) {
    Eigen::Vector2d low = outline.front(), high = outline.front();
    for (const Eigen::Vector2d& corner : outline) low = low.cwiseMin(corner), high = high.cwiseMax(corner);
    text += fmt::format("{}x {:.0f} to {:.0f}, y {:.0f} to {:.0f} cm", text.empty() ? "" : "; ",
                        100.0 * low.x(), 100.0 * high.x(), 100.0 * low.y(), 100.0 * high.y());
  }
  return text.empty() ? "-" : text;
}

std::string hour_rows(const CalendarAnswer& answer, const FacedCalendar& faced) {
  const CalendarDay& day = faced.months.front();
  const std::size_t meter = answer.calendar.exposure_meter();
  PlainTable table{{{"time", right},
                    {"sun up", right},
                    {"dish dome lx"},
                    {"EV"},
                    {"lit:shadow"},
                    {"sun on dish"},
                    {"sun patch on the table"}},
                   {},
                   ""};
  for (const CalendarStep& step : day.steps) {
    if (step.sun_altitude_rad <= 0.0) continue;
    table.rows.push_back({clock_text(step.minute), fmt::format("{:.0f} deg", step.sun_altitude_rad / kDegree),
                          lx_text(step.overcast.lx[meter].value, step.clear.lx[meter].value),
                          range_text(ev100_range(step, meter, answer.set.instruments()[meter].kind)),
                          ratio_text(step), step.sun_on_dish ? "yes" : "no",
                          patch_text(answer, faced, day, step.minute)});
  }
  return fmt::format("{}: sunrise {}, sunset {}\n  good light       {}\n  sun on the dish  {}\n\n{}",
                     date_text(day.date), sun_day_text(day.sun, true), sun_day_text(day.sun, false),
                     stretches_text(day.good), stretches_text(day.sun_on_dish), to_text(table));
}

/// Hours side by side: one column a facing.
std::string facing_rows(const CalendarAnswer& answer) {
  const auto table_of = [&](const auto& cell) {
    PlainTable table{{{"day"}}, {}, ""};
    for (const FacedCalendar& faced : answer.faced) table.columns.push_back({faced.name});
    for (std::size_t m = 0; m < answer.faced.front().months.size(); ++m) {
      const Instant& date = answer.faced.front().months[m].date;
      table.rows.push_back({fmt::format("{:>2} {}", date.day, month_name(date.month))});
      for (const FacedCalendar& faced : answer.faced) table.rows.back().push_back(cell(faced.months[m]));
    }
    return to_text(table);
  };
  const auto hours = [](const std::vector<DayStretch>& stretches) {
    double sum = 0.0;
    for (const DayStretch& each : stretches) sum += each.length_min() / 60.0;
    return sum > 0.0 ? fmt::format("{:.1f} h", sum) : std::string("-");
  };
  return "First window facing: good light\n\n" +
         table_of([](const CalendarDay& d) { return stretches_text(d.good); }) +
         "\nFirst window facing: sun on the dish, clear sky\n\n" +
         table_of([](const CalendarDay& d) { return stretches_text(d.sun_on_dish); }) +
         "\nGood hours a day\n\n" + table_of([&](const CalendarDay& d) { return hours(d.good); });
}

}  // namespace

std::string wanted_text(const WantedExposure& wanted) {
  return fmt::format("{}, ISO {}, {} or faster", to_text(wanted.aperture), wanted.iso,
                     shutter_text(wanted.slowest));
}

std::string place_text(const EarthPlace& place) {
  const double latitude = place.latitude_rad / kDegree, longitude = place.longitude_rad / kDegree;
  return fmt::format("{:.2f}° {}, {:.2f}° {}", std::abs(latitude), latitude < 0.0 ? "S" : "N",
                     std::abs(longitude), longitude < 0.0 ? "W" : "E");
}

std::array<Eigen::Vector2d, 2> table_corners(const Description& d) {
  const Eigen::Vector2d middle(d.table.x.si, d.table.y.si),
      half(0.5 * d.table.width.si, 0.5 * d.table.depth.si);
  return {middle - half, middle + half};
}

std::string calendar_table(const CalendarAnswer& answer) {
  const CalendarPlan& plan = answer.calendar.plan();
  std::string text = fmt::format("{}: {}, clock {}, {}\n\n", answer.description.set.title,
                                 place_text(plan.place), offset_text(plan.offset_min), answer.year);
  if (answer.faced.size() > 1)
    text += facing_rows(answer);
  else if (answer.one_day)
    text += fmt::format("First window faces {}. ", answer.faced.front().name) +
            hour_rows(answer, answer.faced.front());
  else
    text += fmt::format("First window faces {}.\n\n", answer.faced.front().name) +
            month_rows(answer, answer.faced.front());
  text += fmt::format(
      "\nGood: {} by the dish dome in either weather (EV at ISO 100 from {:.1f}), and no sun on the dish.\n"
      "A to b: between an overcast and a clear sky at usual outdoor levels (not the scene's own); a real day "
      "is easily half or\n"
      "double. Sun that enters and is turned by the room: to about a sixth.\n"
      "{} of {} samples a replicate, 16 replicates; widest error bar under an even sky ±{:.3f} stop.\n",
      wanted_text(plan.wanted), plan.wanted.least_ev100(), effort_text(answer.effort),
      answer.set.samples_per_replicate(), answer.set.reached_stops());
  return text;
}

}  // namespace fillside::tools
