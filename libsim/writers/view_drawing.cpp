#include "libsim/writers/view_drawing.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "libsim/base/clock.h"
#include "libsim/writers/dimension_line.h"

namespace fillside {
namespace {

using Kind = SeenThing::Kind;
using Path = std::vector<SheetPoint>;

constexpr Ink kWhite{1.0, 1.0, 1.0}, kWallInk{0.62, 0.60, 0.58}, kTableInk{0.955, 0.94, 0.92},
    kFoodInk{0.90, 0.87, 0.83};

/// Every kind can be told from the others in grey: by its filling, and by how its edge is drawn.
void draw_shape(Drawing& drawing, Kind kind, const Path& path, bool closed) {
  switch (kind) {
    case Kind::wall:
      drawing.fill(path, kWallInk);
      return drawing.stroke(path, true, {kDarkInk, 1.5});
    case Kind::opening:
      drawing.fill(path, kWhite);
      return drawing.stroke(path, true, {kDarkInk, 2.6});
    case Kind::cover:
      drawing.fill(path, {0.40, 0.38, 0.37});
      return drawing.stroke(path, true, {kDarkInk, 1.5});
    case Kind::curtain:
      return drawing.stroke(path, false, {kDarkInk, 4.0, {3.0, 6.0}, true});
    case Kind::table:
      drawing.fill(path, kTableInk);
      return drawing.stroke(path, true, {kDarkInk, 1.8});
    case Kind::prop:
      drawing.fill(path, kWhite);
      return drawing.stroke(path, true, {kQuietInk, 1.8});
    case Kind::food:
      drawing.fill(path, kFoodInk);
      return drawing.stroke(path, true, {kDarkInk, 3.0});
    case Kind::cloth:
      drawing.stroke(path, true, {kDarkInk, 5.0});
      return drawing.stroke(path, true, {kWhite, 2.6, {5.0, 5.0}});
    case Kind::lamp:
      drawing.fill(path, kWhite);
      return drawing.stroke(path, true, {kDarkInk, 2.2, {3.0, 4.0}});
    case Kind::board:
      drawing.fill(path, with_opacity(kWhite, 0.5));  // what stands behind shows a little
      drawing.stroke(path, true, {kDarkInk, 6.4});
      return drawing.stroke(path, true, {kWhite, 2.6});
    case Kind::dark_board:
      drawing.fill(path, kDarkInk);
      return drawing.stroke(path, true, {kDarkInk, 6.4});
    case Kind::axis:
      return drawing.stroke(path, false, {kQuietInk, 1.6, {14.0, 5.0, 3.0, 5.0}});
    case Kind::camera:
      drawing.fill(path, {0.80, 0.79, 0.78, 0.75});
      return drawing.stroke(path, closed, {kDarkInk, 2.2});
  }
}

class ViewDrawing {
 public:
  ViewDrawing(Drawing& drawing, const SetView& view, const Box& frame, double px_per_cm, double letter_px)
      : drawing_(drawing), view_(view), frame_(frame), scale_(px_per_cm), letter_px_(letter_px) {}

  void draw() {
    drawing_.fill(frame_, kWhite);
    drawing_.within(frame_, [&] {
      for (const SeenThing& thing : view_.things)
        draw_shape(drawing_, thing.kind, path_of(thing), thing.closed);
      cross();
    });
    if (view_.from == ViewFrom::above) clock();
    drawing_.stroke(frame_, {kHairline, 1.5});
    take_places();
    for (const SeenMeasure& m : view_.measures)
      draw_dimension(drawing_, at(m.from_cm), at(m.to_cm), m.text, letter_px_, taken_, texts_);
    for (const SeenThing& thing : view_.things) label(thing);
  }

 private:
  SheetPoint at(const std::array<double, 2>& cm) const {
    return {frame_.left + scale_ * (cm[0] - view_.left_cm),
            frame_.bottom() - scale_ * (cm[1] - view_.low_cm)};
  }
  Path path_of(const SeenThing& thing) const {
    Path path;
    for (const auto& spot : thing.path_cm) path.push_back(at(spot));
    return path;
  }

  void cross() {
    const SheetPoint middle = at({0.0, 0.0});
    const double arm = 0.7 * letter_px_;
    drawing_.stroke(std::array{SheetPoint{middle.x - arm, middle.y}, SheetPoint{middle.x + arm, middle.y}},
                    false, {kDarkInk, 2.2});
    drawing_.stroke(std::array{SheetPoint{middle.x, middle.y - arm}, SheetPoint{middle.x, middle.y + arm}},
                    false, {kDarkInk, 2.2});
  }

  /// The hours stand where they are sighted from the cross along the frame.
  void clock() {
    const SheetPoint middle = at({0.0, 0.0});
    const Lettering letters{.size_px = letter_px_,
                            .ink = kQuietInk,
                            .across = Lettering::Across::middle,
                            .down = Lettering::Down::middle};
    for (int hour = 1; hour <= 12; ++hour) {
      const Direction toward = to_clock(Clock{static_cast<double>(hour)});
      const double dx = toward.x(), dy = -toward.y();
      double reach = 1e9;
      if (std::abs(dx) > 1e-9)
        reach = std::min(reach, ((dx > 0.0 ? frame_.right() : frame_.left) - middle.x) / dx);
      if (std::abs(dy) > 1e-9)
        reach = std::min(reach, ((dy > 0.0 ? frame_.bottom() : frame_.top) - middle.y) / dy);
      const auto on_ray = [&](double px) { return SheetPoint{middle.x + px * dx, middle.y + px * dy}; };
      drawing_.stroke(std::array{on_ray(reach), on_ray(reach - 9.0)}, false, {kQuietInk, 2.0});
      const SheetPoint number = on_ray(reach - 10.0 - 0.75 * letter_px_);
      drawing_.write(fmt::format("{}", hour), number, letters);
      taken_.take(grown({number.x, number.y, 0.0, 0.0}, 0.7 * letter_px_));
    }
  }

  void take_places() {
    for (const SeenThing& thing : view_.things)
      taken_.take_path(path_of(thing), thing.closed, thing.kind == Kind::board ? 9.0 : 7.0);
    for (const SeenMeasure& m : view_.measures)
      taken_.take_path(std::array{at(m.from_cm), at(m.to_cm)}, false, 6.0);
  }

  /// In the thing where there is room, else as near to its outline as can be, with a line to it.
  void label(const SeenThing& thing) {
    if (thing.name.empty()) return;
    const Lettering letters{.size_px = letter_px_,
                            .ink = kDarkInk,
                            .across = Lettering::Across::middle,
                            .down = Lettering::Down::middle};
    const double width = drawing_.width_of(thing.name, letters) + 8.0, height = letter_px_ + 6.0;
    const Path path = path_of(thing);
    for (const Box& place : places_for(thing, path, width, height)) {
      if (!contains(grown(frame_, -3.0), place) || !taken_.is_free(place)) continue;
      taken_.take(place);
      lead(place, path, thing.closed);
      drawing_.write(thing.name, {place.middle_x(), place.middle_y()}, letters);
      return;
    }
  }

  /// Best first.
  std::vector<Box> places_for(const SeenThing& thing, const Path& path, double width, double height) const {
    const Box around = box_around(path);
    const auto box_at = [&](double x, double y) {
      return Box{x - width / 2.0, y - height / 2.0, width, height};
    };
    std::vector<Box> places;
    if (thing.kind == Kind::table && view_.from == ViewFrom::above)
      places.push_back(box_at(around.left + width / 2.0 + 8.0, around.bottom() - height / 2.0 - 6.0));
    else if (thing.kind == Kind::table)
      return {box_at(around.middle_x(), around.bottom() + height / 2.0 + 5.0)};
    places.push_back(box_at(around.middle_x(), around.middle_y()));
    const MeasuredPath outline(path, thing.closed);
    constexpr int kSpots = 16, kTurns = 8;
    for (double gap = 7.0; gap < 130.0; gap += 8.0)
      for (int spot = 0; spot < kSpots; ++spot)
        for (int turn = 0; turn < kTurns; ++turn) {
          const SheetPoint on = outline.at(outline.length_px() * (spot + 0.5) / kSpots);
          const double x = std::cos(2.0 * kPi * turn / kTurns), y = std::sin(2.0 * kPi * turn / kTurns);
          places.push_back(box_at(on.x + x * (gap + width / 2.0), on.y + y * (gap + height / 2.0)));
        }
    return places;
  }

  /// A thin line from a name to its thing, when it stands apart.
  void lead(const Box& name, const Path& path, bool closed) {
    const MeasuredPath outline(path, closed);
    const auto on_name = [&](const SheetPoint& p) {
      return SheetPoint{std::clamp(p.x, name.left, name.right()), std::clamp(p.y, name.top, name.bottom())};
    };
    SheetPoint to = path.front();
    for (double along = 0.0; along <= outline.length_px(); along += 4.0)
      if (const SheetPoint spot = outline.at(along);
          distance_px(spot, on_name(spot)) < distance_px(to, on_name(to)))
        to = spot;
    const Box around = box_around(path);
    if (closed && contains(around, {name.middle_x(), name.middle_y(), 0.0, 0.0})) return;
    if (distance_px(to, on_name(to)) > 14.0)
      drawing_.stroke(std::array{on_name(to), to}, false, {kQuietInk, 1.0});
  }

  Drawing& drawing_;
  const SetView& view_;
  Box frame_;
  double scale_, letter_px_;
  TakenPlaces taken_;  ///< by anything
  TakenPlaces texts_;  ///< by figures alone
};

}  // namespace

Box box_of(const SetView& view, const SheetPoint& left_top, double px_per_cm) {
  return {left_top.x, left_top.y, px_per_cm * (view.right_cm - view.left_cm),
          px_per_cm * (view.high_cm - view.low_cm)};
}

void draw_view(Drawing& drawing, const SetView& view, const Box& frame, double px_per_cm, double letter_px) {
  ViewDrawing(drawing, view, frame, px_per_cm, letter_px).draw();
}

void draw_sample(Drawing& drawing, SeenThing::Kind kind, const Box& in) {
  const bool line = kind == Kind::curtain || kind == Kind::axis;
  const bool thin = kind == Kind::board || kind == Kind::dark_board || kind == Kind::cloth;
  const double middle = in.middle_y();
  if (line)
    draw_shape(drawing, kind, {{in.left, middle}, {in.right(), middle}}, false);
  else if (thin)
    draw_shape(drawing, kind,
               {{in.left, middle - 2.0},
                {in.right(), middle - 2.0},
                {in.right(), middle + 2.0},
                {in.left, middle + 2.0}},
               true);
  else
    draw_shape(drawing, kind,
               {{in.left, in.top}, {in.right(), in.top}, {in.right(), in.bottom()}, {in.left, in.bottom()}},
               true);
}

}  // namespace fillside
