// A year at one meter as a page: dates across, the hours of the clock up, the colour is the exposure value,
// the dark hours are dark and the hours with sun on the dish are outlined and hatched.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/picture.h"
#include "libsim/what_if/calendar.h"

namespace fillside {

struct YearSheet {
  std::string title, note;            ///< what is shown, and of which set and place
  std::vector<std::string> captions;  ///< small, at the foot
  std::size_t meter = 0;
  ReadingKind kind = ReadingKind::dome;
  double least_ev100 = 5.0;  ///< of the wanted exposure: marked on the scale
};

/// Draws every day of a year; all days have the same steps. Throws WriteError without days.
Picture year_sheet(const std::vector<CalendarDay>& days, const YearSheet& sheet);

}  // namespace fillside
