// One day at a meter as a page: the exposure value as a ribbon between an overcast and a clear sky, the hours
// with sun on the dish, the good hours.
#pragma once

#include <string>
#include <vector>

#include "libsim/view/picture.h"
#include "libsim/what_if/calendar.h"

namespace fillside {

struct DaySheet {
  std::string title, note;
  std::vector<std::string> captions;
  std::size_t meter = 0;
  ReadingKind kind = ReadingKind::dome;
  double least_ev100 = 5.0;
  std::string least_text;  ///< "1 s at f/5.6, ISO 100"
};

Picture day_sheet(const CalendarDay& day, const DaySheet& sheet);

}  // namespace fillside
