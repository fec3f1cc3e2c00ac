#include "libsim/writers/map_things.h"

#include <algorithm>

namespace fillside {
namespace {

using Kind = MapOutline::Kind;

Lettering label_lettering() {
  return {.size_px = 14.5, .across = Lettering::Across::middle, .down = Lettering::Down::middle};
}

// Rim and core of the line for each kind: a board looks like a board on any field colour.
std::vector<Stroke> strokes_for(Kind kind) {
  switch (kind) {
    case Kind::board:
      return {{kDarkInk, 9.0}, {kPaper, 4.5}};
    case Kind::diffuser:
      return {{kDarkInk, 8.0}, {kPaper, 5.0}, {kDarkInk, 5.0, {3.0, 9.0}}};
    case Kind::window:
      return {{kPaper, 11.0}, {kDarkInk, 9.0}};
    case Kind::table:
      return {{with_opacity(kPaper, 0.7), 3.0}, {kDarkInk, 1.2, {8.0, 5.0}}};
    case Kind::dish:
      return {{with_opacity(kPaper, 0.85), 5.0}, {kDarkInk, 2.4}};
    case Kind::camera:
    case Kind::prop:
      break;
  }
  return {{with_opacity(kPaper, 0.75), 4.0}, {kDarkInk, 1.6}};
}

// Middles of boxes that touch a line at a few places, on either side of it.
void add_beside(std::vector<SheetPoint>& middles, const std::vector<SheetPoint>& seen, double width,
                double height) {
  for (const double part : {0.5, 0.25, 0.75}) {
    const auto at = static_cast<std::size_t>(part * static_cast<double>(seen.size() - 1));
    const SheetPoint before = seen[at > 2 ? at - 2 : 0], after = seen[std::min(at + 2, seen.size() - 1)];
    const double length = std::max(distance_px(before, after), 1e-6);
    const double normal_x = (before.y - after.y) / length, normal_y = (after.x - before.x) / length;
    for (const double side : {1.0, -1.0}) {
      const double out = side * (11.0 + (std::abs(normal_x) * width + std::abs(normal_y) * height) / 2.0);
      middles.push_back({seen[at].x + out * normal_x, seen[at].y + out * normal_y});
    }
  }
}

void add_around(std::vector<SheetPoint>& middles, const Box& at, double width, double height) {
  for (const double gap : {9.0, 26.0, 48.0}) {
    const double out_x = width / 2.0 + gap, out_y = height / 2.0 + gap;
    middles.push_back({at.middle_x(), at.bottom() + out_y});
    middles.push_back({at.middle_x(), at.top - out_y});
    middles.push_back({at.right() + out_x, at.middle_y()});
    middles.push_back({at.left - out_x, at.middle_y()});
    for (const double x : {at.left - out_x, at.right() + out_x})
      for (const double y : {at.top, at.bottom()}) middles.push_back({x, y});
  }
}

// Where a name of that size may have its middle, best first: in a thing that is large enough, else beside it.
std::vector<SheetPoint> middles_for(const MapOutline& thing, const std::vector<SheetPoint>& seen,
                                    double width, double height) {
  std::vector<SheetPoint> middles;
  const Box at = box_around(seen);
  const bool roomy = at.width > 1.3 * width && at.height > 2.0 * height;
  if (!thing.closed) add_beside(middles, seen, width, height);
  if (thing.kind == Kind::table)
    middles.push_back({at.left + width / 2.0 + 9.0, at.bottom() - height / 2.0 - 9.0});
  else if (thing.closed && roomy)
    middles.push_back({at.middle_x(), at.middle_y()});
  add_around(middles, at, width, height);
  return middles;
}

}  // namespace

std::vector<ThingLabel> place_labels(const Map& map, const MapLayout& layout, const Drawing& ruler,
                                     TakenPlaces& taken) {
  for (const MapOutline& thing : map.outlines)
    taken.take_path(layout.path_of(thing.path_cm), thing.closed, thing.kind == Kind::board ? 12.0 : 7.0);
  std::vector<ThingLabel> labels;
  for (const MapOutline& thing : map.outlines) {
    const std::vector<SheetPoint> seen =
        visible_spots(MeasuredPath(layout.path_of(thing.path_cm), thing.closed), layout.plot);
    if (thing.path_cm.empty() || seen.empty() || thing.label.empty()) continue;
    const Lettering lettering = label_lettering();
    const double width = ruler.width_of(thing.label, lettering) + 12.0, height = lettering.size_px + 8.0;
    for (const SheetPoint& middle : middles_for(thing, seen, width, height)) {
      const Box place{middle.x - width / 2.0, middle.y - height / 2.0, width, height};
      if (!contains(grown(layout.plot, -11.0), place) || !taken.is_free(place)) continue;
      labels.push_back({thing.label, place});
      taken.take(grown(place, 3.0));
      break;
    }
  }
  return labels;
}

void draw_things(Drawing& drawing, const Map& map, const MapLayout& layout) {
  drawing.within(layout.plot, [&] {
    for (const MapOutline& thing : map.outlines)
      for (const Stroke& stroke : strokes_for(thing.kind))
        drawing.stroke(layout.path_of(thing.path_cm), thing.closed, stroke);
  });
}

void draw_labels(Drawing& drawing, const std::vector<ThingLabel>& labels) {
  for (const ThingLabel& label : labels) {
    drawing.fill(label.box, with_opacity(kPaper, 0.86));
    drawing.write(label.text, {label.box.middle_x(), label.box.middle_y()}, label_lettering());
  }
}

}  // namespace fillside
