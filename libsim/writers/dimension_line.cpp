#include "libsim/writers/dimension_line.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "libsim/base/space.h"

namespace fillside {
namespace {

void draw_end(Drawing& drawing, const SheetPoint& at, double direction, double reach_px) {
  const double slant = direction + kPi / 4.0;
  const double x = reach_px * std::cos(slant), y = reach_px * std::sin(slant);
  drawing.stroke(std::array{SheetPoint{at.x - x, at.y - y}, SheetPoint{at.x + x, at.y + y}}, false,
                 {kDarkInk, 2.2});
}

/// The box around a text turned by an angle.
Box turned_box(const SheetPoint& middle, double width, double height, double angle) {
  const double c = std::abs(std::cos(angle)), s = std::abs(std::sin(angle));
  const double wide = c * width + s * height, high = s * width + c * height;
  return {middle.x - wide / 2.0, middle.y - high / 2.0, wide, high};
}

}  // namespace

void draw_dimension(Drawing& drawing, const SheetPoint& from, const SheetPoint& to, const std::string& text,
                    double letter_px, TakenPlaces& taken, TakenPlaces& texts) {
  const double direction = std::atan2(to.y - from.y, to.x - from.x);
  drawing.stroke(std::array{from, to}, false, {kQuietInk, 1.3});
  draw_end(drawing, from, direction, 0.32 * letter_px);
  draw_end(drawing, to, direction, 0.32 * letter_px);
  double reading = direction;
  if (reading > kPi / 2.0 - 1e-6) reading -= kPi;
  if (reading < -kPi / 2.0 - 1e-6) reading += kPi;
  const Lettering letters{.size_px = letter_px,
                          .ink = kDarkInk,
                          .across = Lettering::Across::middle,
                          .down = Lettering::Down::middle,
                          .turned_rad = reading,
                          .halo_px = 3.0,
                          .halo = {1.0, 1.0, 1.0}};
  const double width = drawing.width_of(text, letters) + 6.0, height = letter_px + 2.0;
  const double nx = std::sin(reading), ny = -std::cos(reading);
  const auto at = [&](double along, double aside) {
    return SheetPoint{std::lerp(from.x, to.x, along) + aside * nx,
                      std::lerp(from.y, to.y, along) + aside * ny};
  };
  const auto box = [&](const SheetPoint& middle) { return turned_box(middle, width, height, reading); };
  const double beside = 0.5 * height + 6.0;
  std::vector<SheetPoint> beside_it, on_it;
  for (const double along : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
    beside_it.push_back(at(along, beside));
    beside_it.push_back(at(along, -beside));
  }
  for (const double along : {0.5, 0.62, 0.74, 0.38, 0.86, 0.26}) on_it.push_back(at(along, 0.0));
  const auto clear = std::ranges::find_if(beside_it, [&](const auto& p) { return taken.is_free(box(p)); });
  const auto legible = std::ranges::find_if(on_it, [&](const auto& p) { return texts.is_free(box(p)); });
  const SheetPoint best = clear != beside_it.end() ? *clear
                          : legible != on_it.end() ? *legible
                                                   : on_it.front();
  drawing.write(text, best, letters);
  taken.take(box(best));
  texts.take(box(best));
}

}  // namespace fillside
