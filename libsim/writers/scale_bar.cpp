#include "libsim/writers/scale_bar.h"

#include <string>

#include "libsim/view/round_numbers.h"

namespace fillside {

double draw_scale_bar(Drawing& drawing, const SheetPoint& at, BarEnd end, double px_per_cm, double most_px,
                      double letter_px) {
  const double cm = one_two_five_below(most_px / px_per_cm), length = cm * px_per_cm;
  const double left = end == BarEnd::left ? at.x : at.x - length, right = left + length;
  const double tick = 0.4 * letter_px;
  const std::array<SheetPoint, 4> bar{SheetPoint{left, at.y - tick}, SheetPoint{left, at.y},
                                      SheetPoint{right, at.y}, SheetPoint{right, at.y - tick}};
  drawing.stroke(bar, false, {kDarkInk, std::max(2.0, letter_px / 9.0)});
  const Lettering lettering{
      .size_px = letter_px,
      .across = end == BarEnd::left ? Lettering::Across::left : Lettering::Across::right};
  drawing.write(number_text(cm, cm) + " cm", {at.x, at.y - 0.75 * letter_px}, lettering);
  return std::max(length, drawing.width_of(number_text(cm, cm) + " cm", lettering));
}

}  // namespace fillside
