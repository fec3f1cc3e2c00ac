#include "libsim/writers/dimension_line.h"

#include <array>
#include <cmath>

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
                    double letter_px, TakenPlaces& taken) {
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
  SheetPoint best{(from.x + to.x) / 2.0, (from.y + to.y) / 2.0};
  const double aside = 0.5 * height + 6.0, nx = std::sin(reading), ny = -std::cos(reading);
  for (const double along : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
    bool found = false;
    for (const double side : {1.0, -1.0}) {
      const SheetPoint at{std::lerp(from.x, to.x, along) + side * aside * nx,
                          std::lerp(from.y, to.y, along) + side * aside * ny};
      if (!taken.is_free(turned_box(at, width, height, reading))) continue;
      best = at;
      found = true;
      break;
    }
    if (found) break;
  }
  drawing.write(text, best, letters);
  taken.take(turned_box(best, width, height, reading));
}

}  // namespace fillside
