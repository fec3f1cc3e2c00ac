#include "libsim/writers/map_axes.h"

#include "libsim/base/space.h"
#include "libsim/view/round_numbers.h"
#include "libsim/writers/paragraph.h"

namespace fillside {
namespace {

constexpr double kTickPx = 6.0;

Lettering tick_lettering() { return {.size_px = 16.0, .ink = kQuietInk}; }
Lettering axis_lettering() {
  return {
      .size_px = 17.0, .ink = kDarkInk, .across = Lettering::Across::middle, .down = Lettering::Down::middle};
}

struct Tick {
  double cm;
  std::string text;
};

std::vector<Tick> ticks_between(double low_cm, double high_cm, double px_per_cm) {
  const double step_cm = one_two_five_above(75.0 / px_per_cm);
  std::vector<Tick> ticks;
  const auto first = static_cast<long>(std::ceil(low_cm / step_cm - 1e-6));
  const auto last = static_cast<long>(std::floor(high_cm / step_cm + 1e-6));
  for (long i = first; i <= last; ++i) {
    const double cm = static_cast<double>(i) * step_cm;
    ticks.push_back({cm, number_text(cm, step_cm)});
  }
  return ticks;
}

// Outwards from the gutter, next to its number: on the map it would be lost among colours and lines.
void draw_tick(Drawing& drawing, const SheetPoint& at, const SheetPoint& outward) {
  const std::array<SheetPoint, 2> line{at,
                                       SheetPoint{at.x + kTickPx * outward.x, at.y + kTickPx * outward.y}};
  drawing.stroke(line, false, {kQuietInk, 1.2});
}

void draw_across(Drawing& drawing, const Map& map, const MapLayout& layout) {
  Lettering numbers = tick_lettering();
  numbers.across = Lettering::Across::middle;
  numbers.down = Lettering::Down::top;
  for (const Tick& tick : ticks_between(map.left_cm, map.right_cm, layout.px_per_cm)) {
    const double x = layout.spot_of(tick.cm, map.near_cm).x;
    draw_tick(drawing, {x, layout.gutter.top}, {0.0, -1.0});
    draw_tick(drawing, {x, layout.gutter.bottom()}, {0.0, 1.0});
    drawing.write(tick.text, {x, layout.gutter.bottom() + 12.0}, numbers);
  }
  drawing.write(map.across_label, {layout.plot.middle_x(), layout.gutter.bottom() + 49.0}, axis_lettering());
}

void draw_along(Drawing& drawing, const Map& map, const MapLayout& layout) {
  Lettering numbers = tick_lettering();
  numbers.across = Lettering::Across::right;
  numbers.down = Lettering::Down::middle;
  for (const Tick& tick : ticks_between(map.near_cm, map.far_cm, layout.px_per_cm)) {
    const double y = layout.spot_of(map.left_cm, tick.cm).y;
    draw_tick(drawing, {layout.gutter.left, y}, {-1.0, 0.0});
    draw_tick(drawing, {layout.gutter.right(), y}, {1.0, 0.0});
    drawing.write(tick.text, {layout.gutter.left - 11.0, y}, numbers);
  }
  Lettering name = axis_lettering();
  name.turned_rad = -kPi / 2.0;
  const std::string text =
      shortened(drawing, map.along_label, name, std::max(layout.plot.height, 160.0) + 60.0);
  drawing.write(text, {layout.gutter.left - 70.0, layout.plot.middle_y()}, name);
}

}  // namespace

void draw_axes(Drawing& drawing, const Map& map, const MapLayout& layout) {
  draw_across(drawing, map, layout);
  draw_along(drawing, map, layout);
  drawing.stroke(layout.plot, {kDarkInk, 1.4});
}

}  // namespace fillside
