// What `fillside calendar` says: tables for people, a document for programs, lines for spreadsheets.
#pragma once

#include <array>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/what_if/calendar.h"
#include "tools/arguments.h"

namespace fillside::tools {

/// One way the set lies on the compass, with what was read.
struct FacedCalendar {
  std::string name;  ///< "W", or the bearing as written
  SetFacing facing;
  std::vector<CalendarDay> months;  ///< one day of each, or the one day that was asked for
};

struct CalendarAnswer {
  const Description& description;
  const DaylitSet& set;
  const Calendar& calendar;
  const Effort& effort;
  int year;
  std::vector<FacedCalendar> faced;
  bool one_day = false;
};

std::string calendar_table(const CalendarAnswer& answer);
nlohmann::ordered_json calendar_json(const CalendarAnswer& answer);
/// Every step of the days: a line a step, lx and EV at ISO 100 of every meter in both weathers.
std::string calendar_csv(const CalendarAnswer& answer, const std::vector<CalendarDay>& days);

/// "f/5.6, ISO 100, 1 s or faster".
std::string wanted_text(const WantedExposure& wanted);
std::string place_text(const EarthPlace& place);
/// The table top's near left and far right corner, m from the dish.
std::array<Eigen::Vector2d, 2> table_corners(const Description& description);

}  // namespace fillside::tools
