#include "libsim/writers/map_strips.h"

#include <optional>

#include "libsim/base/space.h"

namespace fillside {
namespace {

constexpr double kStripPx = 20.0;

Lettering strip_lettering() {
  return {.size_px = 13.5, .across = Lettering::Across::middle, .down = Lettering::Down::middle};
}

// The side that the middle of the thing is farthest beyond, when no part of it is on the map.
std::optional<Side> side_of(const Map& map, const MapOutline& thing, const MapLayout& layout) {
  if (thing.path_cm.empty()) return std::nullopt;
  const MeasuredPath path(layout.path_of(thing.path_cm), thing.closed);
  if (!visible_spots(path, layout.plot).empty()) return std::nullopt;
  double x_cm = 0.0, y_cm = 0.0;
  for (const auto& [x, y] : thing.path_cm) x_cm += x, y_cm += y;
  x_cm /= static_cast<double>(thing.path_cm.size());
  y_cm /= static_cast<double>(thing.path_cm.size());
  const std::array<double, 4> beyond{map.left_cm - x_cm, x_cm - map.right_cm, y_cm - map.far_cm,
                                     map.near_cm - y_cm};
  const auto farthest = std::max_element(beyond.begin(), beyond.end());
  if (*farthest < 0.0) return std::nullopt;
  return static_cast<Side>(farthest - beyond.begin());
}

bool stands_upright(Side side) { return side == Side::left || side == Side::right; }

// From where to where along its side, long enough for its name and within the side.
std::array<double, 2> extent_px(const MapOutline& thing, Side side, const MapLayout& layout,
                                double least_px) {
  const bool upright = stands_upright(side);
  const double first = upright ? layout.plot.top : layout.plot.left;
  const double last = upright ? layout.plot.bottom() : layout.plot.right();
  const Box around = box_around(layout.path_of(thing.path_cm));
  double low = std::clamp(upright ? around.top : around.left, first, last);
  double high = std::clamp(upright ? around.bottom() : around.right(), first, last);
  const double wanted = std::min(least_px, last - first);
  if (high - low < wanted) {
    low = std::clamp((low + high - wanted) / 2.0, first, last - wanted);
    high = low + wanted;
  }
  return {low, high};
}

Box strip_box(const MapLayout& layout, Side side, int lane, const std::array<double, 2>& extent) {
  const double out = kLanePx * lane + (kLanePx - kStripPx), length = extent[1] - extent[0];
  const Box& plot = layout.plot;
  switch (side) {
    case Side::left:
      return {plot.left - out - kStripPx, extent[0], kStripPx, length};
    case Side::right:
      return {plot.right() + out, extent[0], kStripPx, length};
    case Side::far:
      return {extent[0], plot.top - out - kStripPx, length, kStripPx};
    case Side::near:
      break;
  }
  return {extent[0], plot.bottom() + out, length, kStripPx};
}

bool gets_strip(const MapOutline& thing) {
  return thing.kind != MapOutline::Kind::table && thing.kind != MapOutline::Kind::prop;
}

}  // namespace

std::vector<EdgeStrip> edge_strips(const Map& map, const MapLayout& layout, const Drawing& ruler) {
  std::vector<EdgeStrip> strips;
  for (const MapOutline& thing : map.outlines) {
    const std::optional<Side> side = gets_strip(thing) ? side_of(map, thing, layout) : std::nullopt;
    if (!side) continue;
    const double least_px = ruler.width_of(thing.label, strip_lettering()) + 18.0;
    EdgeStrip strip{thing.label, thing.kind, *side, 0, {}};
    const std::array<double, 2> extent = extent_px(thing, *side, layout, least_px);
    const auto hits = [&](const EdgeStrip& other) { return overlap(grown(strip.box, 3.0), other.box); };
    for (strip.box = strip_box(layout, *side, 0, extent); std::any_of(strips.begin(), strips.end(), hits);)
      strip.box = strip_box(layout, *side, ++strip.lane, extent);
    strips.push_back(strip);
  }
  return strips;
}

Lanes lanes_of(const std::vector<EdgeStrip>& strips) {
  Lanes lanes{};
  for (const EdgeStrip& strip : strips) {
    int& lane = lanes[static_cast<std::size_t>(strip.side)];
    lane = std::max(lane, strip.lane + 1);
  }
  return lanes;
}

void draw_strips(Drawing& drawing, const std::vector<EdgeStrip>& strips) {
  for (const EdgeStrip& strip : strips) {
    const bool window = strip.kind == MapOutline::Kind::window;
    drawing.fill(strip.box, window ? kDarkInk : kPaper);
    drawing.stroke(strip.box, {kDarkInk, 1.4});
    Lettering lettering = strip_lettering();
    lettering.ink = window ? kPaper : kDarkInk;
    lettering.turned_rad = stands_upright(strip.side) ? -kPi / 2.0 : 0.0;
    drawing.within(strip.box, [&] {
      drawing.write(strip.label, {strip.box.middle_x(), strip.box.middle_y()}, lettering);
    });
  }
}

}  // namespace fillside
