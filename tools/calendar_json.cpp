#include <cmath>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/view/exposure.h"
#include "libsim/writers/csv.h"
#include "libsim/writers/hour_axis.h"
#include "tools/calendar_answer.h"

namespace fillside::tools {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

Json figure(const Figure& f) {
  return {{"value", number(f.value)}, {"half_width_95", number(f.half_width_95)}};
}

Json moment(const std::optional<Instant>& at) { return at ? Json(to_text(*at)) : Json(nullptr); }

Json stretches(const CalendarDay& day, const std::vector<DayStretch>& all) {
  Json list = Json::array();
  for (const DayStretch& each : all)
    list.push_back({{"from", to_text(at_minute(day.date, std::round(each.from_min * 60.0) / 60.0))},
                    {"to", to_text(at_minute(day.date, std::round(each.to_min * 60.0) / 60.0))}});
  return list;
}

double ev100(double lx, ReadingKind kind) {
  return (kind == ReadingKind::dome ? ev100_of_dome(Estimate(lx)) : ev100_of_flat(Estimate(lx))).value();
}

Json meters(const CalendarAnswer& answer, const CalendarStep& step) {
  Json list = Json::array();
  for (std::size_t m = 0; m < answer.set.instruments().size(); ++m) {
    const WeatherBand ev = ev100_range(step, m, answer.set.instruments()[m].kind);
    list.push_back({{"name", answer.set.coefficients()[m].name},
                    {"overcast_lx", figure(step.overcast.lx[m])},
                    {"clear_lx", figure(step.clear.lx[m])},
                    {"ev100_low", number(ev.low)},
                    {"ev100_high", number(ev.high)}});
  }
  return list;
}

Json patches(const CalendarAnswer& answer, const FacedCalendar& faced, const CalendarDay& day,
             double minute) {
  Json list = Json::array();
  const Direction to_sun = answer.calendar.to_sun(faced.facing, day.date, minute);
  if (!faced.facing.outside.sun_is_free(to_sun)) return list;
  for (const TableOutline& outline :
       sun_patches_on(answer.set.scene(), table_corners(answer.description), to_sun)) {
    Json corners = Json::array();
    for (const Eigen::Vector2d& corner : outline) corners.push_back({corner.x(), corner.y()});
    list.push_back(corners);
  }
  return list;
}

Json step(const CalendarAnswer& answer, const FacedCalendar& faced, const CalendarDay& day,
          const CalendarStep& s) {
  const auto ratio = [](const StepLight& light) {
    return light.lit_to_shadow ? figure(*light.lit_to_shadow) : Json(nullptr);
  };
  return {{"time", to_text(at_minute(day.date, s.minute))},
          {"sun_altitude_deg", s.sun_altitude_rad / kDegree},
          {"sun_on_dish", s.sun_on_dish},
          {"meters", meters(answer, s)},
          {"lit_to_shadow", {{"overcast", ratio(s.overcast)}, {"clear", ratio(s.clear)}}},
          {"sun_patches_m", patches(answer, faced, day, s.minute)}};
}

Json day(const CalendarAnswer& answer, const FacedCalendar& faced, const CalendarDay& d) {
  Json steps = Json::array();
  for (const CalendarStep& s : d.steps)
    if (s.sun_altitude_rad > 0.0) steps.push_back(step(answer, faced, d, s));
  return {{"date", to_text(d.date).substr(0, 10)},
          {"sun", d.sun.kind == DayKind::polar_day     ? "up all day"
                  : d.sun.kind == DayKind::polar_night ? "does not rise"
                                                       : "rises or sets"},
          {"sunrise", moment(d.sun.sunrise)},
          {"transit", moment(d.sun.transit)},
          {"sunset", moment(d.sun.sunset)},
          {"sun_on_dish", stretches(d, d.sun_on_dish)},
          {"good", stretches(d, d.good)},
          {"steps", steps}};
}

}  // namespace

nlohmann::ordered_json calendar_json(const CalendarAnswer& answer) {
  const CalendarPlan& plan = answer.calendar.plan();
  Json faced = Json::array();
  for (const FacedCalendar& each : answer.faced) {
    Json days = Json::array();
    for (const CalendarDay& d : each.months) days.push_back(day(answer, each, d));
    faced.push_back({{"first_window_faces", each.name}, {"days", days}});
  }
  return {{"schema", "fillside.calendar/1"},
          {"scene", answer.description.file},
          {"title", answer.description.set.title},
          {"scene_hash", scene_hash(answer.description)},
          {"seed", answer.effort.seed},
          {"year", answer.year},
          {"latitude_deg", plan.place.latitude_rad / kDegree},
          {"longitude_deg", plan.place.longitude_rad / kDegree},
          {"clock", offset_text(plan.offset_min)},
          {"wanted",
           {{"aperture", plan.wanted.aperture.si},
            {"iso", plan.wanted.iso},
            {"slowest_s", plan.wanted.slowest.si},
            {"ev100_from", plan.wanted.least_ev100()}}},
          {"reached_stops", answer.set.reached_stops()},
          {"samples_per_replicate", answer.set.samples_per_replicate()},
          {"facings", faced}};
}

std::string calendar_csv(const CalendarAnswer& answer, const std::vector<CalendarDay>& days) {
  std::vector<CsvColumn> columns{{"time", ""},
                                 {"sun altitude", "deg"},
                                 {"sun on dish", "0 or 1"},
                                 {"lit:shadow overcast", ""},
                                 {"lit:shadow clear", ""}};
  for (const Coefficients& c : answer.set.coefficients())
    for (const std::string weather : {" overcast", " clear"}) {
      columns.push_back({c.name + weather, "lx"});
      columns.push_back({c.name + weather, "EV100"});
    }
  std::vector<std::vector<CsvCell>> rows;
  for (const CalendarDay& d : days)
    for (const CalendarStep& s : d.steps) {
      const auto ratio = [](const StepLight& l) {
        return l.lit_to_shadow ? l.lit_to_shadow->value : std::nan("");
      };
      std::vector<CsvCell> row{to_text(at_minute(d.date, s.minute)), s.sun_altitude_rad / kDegree,
                               s.sun_on_dish ? 1.0 : 0.0, ratio(s.overcast), ratio(s.clear)};
      for (std::size_t m = 0; m < answer.set.instruments().size(); ++m)
        for (const StepLight* light : {&s.overcast, &s.clear}) {
          row.emplace_back(light->lx[m].value);
          row.emplace_back(ev100(light->lx[m].value, answer.set.instruments()[m].kind));
        }
      rows.push_back(std::move(row));
    }
  return csv_text(columns, rows);
}

}  // namespace fillside::tools
