#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "libsim/scene/canonical.h"
#include "libsim/scene/daylight.h"
#include "libsim/scene/wording.h"
#include "libsim/writers/day_sheet.h"
#include "libsim/writers/hour_axis.h"
#include "libsim/writers/png.h"
#include "libsim/writers/year_sheet.h"
#include "tools/calendar_answer.h"
#include "tools/exit_status.h"
#include "tools/open_scene.h"
#include "tools/terminal.h"
#include "tools/verbs.h"
#include "tools/written.h"

namespace fillside::tools {
namespace {

constexpr int kUsualYear = 2026;
/// A reading tells of one sky and of the set together, and no calendar can part them again.
constexpr const char* kAnchorLeftOut =
    "the [anchor] is one reading under the sky of one moment; a calendar goes by the usual sky of every hour "
    "and "
    "leaves it out";
constexpr int kListedDay = 21;  // near the solstices and equinoxes

/// Every reason why the sun's way over this set is not known, at once.
void check_sun_is_known(const Description& d, const Arguments& arguments) {
  std::vector<Problem> problems;
  const auto missing = [&](const Place& place, const std::string& what, const std::string& remedy) {
    problems.push_back(problem_at(place, "a calendar needs " + what, remedy));
  };
  if (!d.daylight.latitude || !d.daylight.longitude)
    missing(d.daylight.place, "the place on Earth",
            "give latitude and longitude in [daylight], for example latitude = \"48.9 deg\"");
  if (!compass_of(d))
    missing(d.windows.empty() ? Place{d.file, 0, 0} : d.windows.front().place,
            "to know where the window looks", "say facing = \"SW\" in the first [[window]]");
  if (!arguments.offset_min && !d.daylight.time)
    missing(d.daylight.place, "to know your clock",
            "add --offset +01:00, or a time with its offset in [daylight]");
  if (!problems.empty()) throw SceneError(std::move(problems));
}

int year_of(const Description& d, const Arguments& arguments) {
  if (arguments.date) return arguments.date->year;
  if (arguments.year) return *arguments.year;
  return d.daylight.time ? d.daylight.time->year : kUsualYear;
}

CalendarPlan plan_of(const Description& d, const Arguments& arguments) {
  CalendarPlan plan;
  plan.place = {d.daylight.latitude->si, d.daylight.longitude->si, 0.0};
  plan.offset_min = arguments.offset_min ? *arguments.offset_min : d.daylight.time->offset_min;
  plan.wanted = {d.camera.aperture, arguments.iso, arguments.slowest.value_or(seconds(1.0))};
  plan.step_min = arguments.step_min;
  plan.threads = arguments.threads;
  return plan;
}

std::vector<Instant> listed_dates(const Arguments& arguments, int year, int offset_min) {
  if (!arguments.date) return one_day_of_every_month(year, kListedDay, offset_min);
  Instant date = *arguments.date;
  date.offset_min = offset_min;
  return {date};
}

std::vector<FacedCalendar> faced_calendars(const Description& d, const Arguments& arguments,
                                           const Calendar& calendar, const std::vector<Instant>& dates) {
  static constexpr std::array<std::string_view, 8> kNames{"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  std::vector<FacedCalendar> faced;
  const auto add = [&](std::string name, SetFacing facing) {
    auto months = calendar.days(facing, dates);
    faced.push_back({std::move(name), std::move(facing), std::move(months)});
  };
  if (arguments.facings == 1)
    add(d.windows.front().facing, facing_of(d));
  else
    for (int i = 0; i < arguments.facings; ++i)
      add(std::string(kNames[static_cast<std::size_t>(i * 8 / arguments.facings)]),
          facing_of(d, degrees(i * 360.0 / arguments.facings)));
  return faced;
}

DaylitSet measured(const Description& d, const Effort& effort, bool quiet) {
  ProgressBar bar("measuring", quiet);
  return DaylitSet(d, effort, bar.callback());
}

std::string where_text(const CalendarAnswer& answer) {
  const CalendarPlan& plan = answer.calendar.plan();
  return fmt::format("Dish dome, first window facing {}, {}, clock {} all the year",
                     answer.faced.front().name, place_text(plan.place), offset_text(plan.offset_min));
}

std::vector<std::string> captions_of(const CalendarAnswer& answer) {
  return {fmt::format("Good: {} in either weather, and no sun on the dish.",
                      wanted_text(answer.calendar.plan().wanted)),
          fmt::format("scene {}, {}, fillside {}", scene_hash(answer.description), effort_text(answer.effort),
                      FILLSIDE_VERSION)};
}

Picture year_picture(const CalendarAnswer& answer, const std::vector<CalendarDay>& days) {
  const std::size_t meter = answer.calendar.exposure_meter();
  return year_sheet(days,
                    {.title = fmt::format("{}: the light in {}", answer.description.set.title, answer.year),
                     .note = where_text(answer) + ". Colour: middle between an overcast and a clear sky.",
                     .captions = captions_of(answer),
                     .meter = meter,
                     .kind = answer.set.instruments()[meter].kind,
                     .least_ev100 = answer.calendar.plan().wanted.least_ev100()});
}

Picture day_picture(const CalendarAnswer& answer) {
  const std::size_t meter = answer.calendar.exposure_meter();
  const CalendarDay& day = answer.faced.front().months.front();
  return day_sheet(
      day, {.title = fmt::format("{}: the light on {}", answer.description.set.title, date_text(day.date)),
            .note = where_text(answer) + ".",
            .captions = captions_of(answer),
            .meter = meter,
            .kind = answer.set.instruments()[meter].kind,
            .least_ev100 = answer.calendar.plan().wanted.least_ev100(),
            .least_text = wanted_text(answer.calendar.plan().wanted)});
}

/// Every day of the year; the sun is followed in coarser steps than on the listed days.
std::vector<CalendarDay> whole_year(const CalendarAnswer& answer) {
  CalendarPlan plan = answer.calendar.plan();
  plan.sun_step_min = 10.0;
  plan.find_good_hours = false;
  return Calendar(answer.set, plan)
      .days(answer.faced.front().facing, every_day_of(answer.year, plan.offset_min));
}

/// The files, and their names for the answer.
nlohmann::ordered_json write_files(const CalendarAnswer& answer, const Arguments& arguments) {
  const std::string stem =
      (std::filesystem::path(arguments.folder) / file_stem_of(arguments.scenes.front(), arguments)).string();
  const Metadata metadata = provenance(arguments, answer.description, answer.effort);
  const std::string png = stem + (answer.one_day ? "-day.png" : "-year.png");
  const std::string csv = stem + (answer.one_day ? "-day.csv" : "-calendar.csv");
  const auto days = answer.one_day ? answer.faced.front().months : whole_year(answer);
  write_file(png, png_bytes(answer.one_day ? day_picture(answer) : year_picture(answer, days), metadata));
  write_file(csv, calendar_csv(answer, days));
  return {{"png", png}, {"csv", csv}};
}

}  // namespace

int run_calendar(const Arguments& arguments) {
  const Description description = open_description(arguments.scenes.front(), arguments);
  check_sun_is_known(description, arguments);
  const bool with_files = arguments.facings == 1;
  if (with_files) make_folder(arguments.folder);  // before the measuring, so that nobody waits for nothing
  const Effort effort = effort_of(arguments, description, kCalendarPrecision);
  const DaylitSet set = measured(description, effort, arguments.quiet);
  const Calendar calendar(set, plan_of(description, arguments));
  const int year = year_of(description, arguments);
  const CalendarAnswer answer{description,
                              set,
                              calendar,
                              effort,
                              year,
                              faced_calendars(description, arguments, calendar,
                                              listed_dates(arguments, year, calendar.plan().offset_min)),
                              arguments.date.has_value()};
  if (description.anchor.says_anything() && !arguments.quiet) note(kAnchorLeftOut);
  nlohmann::ordered_json files;
  if (with_files) files = write_files(answer, arguments);
  if (arguments.json) {
    nlohmann::ordered_json document = calendar_json(answer);
    document["files"] = files;
    document["anchor"] =
        description.anchor.says_anything() ? nlohmann::ordered_json(kAnchorLeftOut) : nullptr;
    say_documents({document});
  } else {
    say(calendar_table(answer));
    if (with_files)
      say(fmt::format("{} and {}\n", files["png"].get<std::string>(), files["csv"].get<std::string>()));
  }
  note_shortfall(arguments, effort, set.reached_stops(), " under an even sky");
  for (const Coefficients& each : set.coefficients()) note_refused(arguments, each.refused);
  return kDone;
}

}  // namespace fillside::tools
