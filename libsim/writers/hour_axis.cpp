#include "libsim/writers/hour_axis.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace fillside {

std::string_view month_name(int month) {
  static constexpr std::array<std::string_view, 12> kNames{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                           "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  return kNames[static_cast<std::size_t>(month - 1)];
}

std::string date_text(const Instant& date) {
  return fmt::format("{} {} {}", date.day, month_name(date.month), date.year);
}

std::string clock_text(double minute) {
  const int whole = static_cast<int>(std::lround(minute));
  return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

std::string offset_text(int offset_min) {
  const int size = std::abs(offset_min);
  const std::string minutes = size % 60 == 0 ? "" : fmt::format(":{:02}", size % 60);
  return fmt::format("UTC{}{}{}", offset_min < 0 ? "-" : "+", size / 60, minutes);
}

void hatch(Drawing& drawing, const Box& box, const Stroke& stroke, double spacing_px) {
  drawing.within(box, [&] {
    // Lines of one family on the whole sheet, so that neighbouring boxes join.
    const double first = std::ceil((box.left + box.top) / spacing_px) * spacing_px;
    for (double sum = first; sum < box.right() + box.bottom(); sum += spacing_px)
      drawing.stroke(
          std::array{SheetPoint{sum - box.top, box.top}, SheetPoint{sum - box.bottom(), box.bottom()}}, false,
          stroke);
  });
}

}  // namespace fillside
