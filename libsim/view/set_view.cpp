#include "libsim/view/set_view.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/geometry/panels.h"
#include "libsim/light/lamp.h"
#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

using Kind = SeenThing::Kind;
using Spot2 = std::array<double, 2>;

constexpr double kWallThick_m = 0.06, kWallBeside_m = 0.15, kWallAbove_m = 0.06, kCurtainInside_m = 0.03;
constexpr double kBeside_cm = 5.0;                          // of a measure from what it measures
constexpr double kMargin_cm = 7.0, kClockMargin_cm = 15.0;  // round everything
constexpr double kBelowTable_cm = 14.0;
constexpr double kDark = 0.2;  // reflectance below which a board is drawn dark

std::string text_of(double cm) { return fmt::format("{:.1f}", std::abs(cm)); }

bool is_dark(const BoardSection& board) {
  if (board.finish.reflectance) return *board.finish.reflectance < kDark;
  const CataloguedSurface* surface = surface_named(board.finish.surface);
  return surface && surface->reflectance < kDark;
}

class ViewMaker {
 public:
  ViewMaker(const PlacedSet& set, ViewFrom from) : set_(set), d_(set.description), view_{from, {}, {}} {
    floor_cm_ = 100.0 * set.room.floor_m;
  }

  SetView made() {
    find_ground();
    windows();
    table();
    items();
    lamps();
    sheets();
    camera();
    bound();
    return std::move(view_);
  }

 private:
  bool above() const { return view_.from == ViewFrom::above; }
  Spot2 seen(const Point& p) const {
    if (above()) return {100.0 * p.x(), 100.0 * p.y()};
    return {view_.from == ViewFrom::six ? 100.0 * p.x() : -100.0 * p.y(), 100.0 * p.z()};
  }
  /// How much of a direction lies across the view's paper; a thing with such a normal is seen edge-on at 1.
  double across(const Direction& d) const {
    return view_.from == ViewFrom::six ? std::abs(d.x()) : std::abs(d.y());
  }
  bool seen_edge_on(const Direction& normal) const {
    return view_.from == ViewFrom::six ? std::abs(normal.x()) >= std::abs(normal.y())
                                       : std::abs(normal.x()) < std::abs(normal.y());
  }

  /// At the back of who looks.
  bool is_behind(const Direction& d) const { return (view_.from == ViewFrom::six ? d.y() : d.x()) < -0.5; }

  void add(Kind kind, std::string name, const std::vector<Point>& corners) {
    FlatPath path;
    for (const Point& corner : corners) path.push_back(seen(corner));
    view_.things.push_back({kind, std::move(name), convex_hull(std::move(path)), true});
  }
  static std::vector<Point> corners(const Rectangle& r) {
    return {r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)};
  }
  static std::vector<Point> thick(const Rectangle& front, double thickness_m) {
    std::vector<Point> all = corners(front), behind = corners(back_of(front, std::max(thickness_m, 1e-3)));
    all.insert(all.end(), behind.begin(), behind.end());
    return all;
  }
  void measure(const Spot2& from, const Spot2& to, std::string text = {}) {
    if (text.empty()) text = text_of(std::hypot(to[0] - from[0], to[1] - from[1]));
    view_.measures.push_back({from, to, std::move(text)});
  }
  /// Upright, from the table top.
  void measure_height(double across_cm, double height_cm) {
    if (std::abs(height_cm) >= 0.05) measure({across_cm, 0.0}, {across_cm, height_cm});
  }

  /// Side views show the floor only for things that stand on it.
  void find_ground() {
    bool on_floor = !d_.table.used;
    for (const PlacedSheet& sheet : set_.sheets) on_floor = on_floor || !sheet.on_table;
    lowest_cm_ = on_floor ? floor_cm_ : std::max(floor_cm_, -kBelowTable_cm);
  }

  void windows() {
    for (const WindowSection& window : d_.windows) {
      if (!window.used) continue;
      const double off_m = set_.room.walls[wall_of(window, set_.room)].distance_m;
      if (&window != &d_.windows.front() && off_m > kFarthestDrawn_m) {
        view_.not_drawn.push_back(window.name + ", " + text_of(100.0 * off_m) + " cm off");
        continue;
      }
      const Rectangle opening = place_opening(window, set_.room);
      const WallPlace& wall = set_.room.walls[wall_of(window, set_.room)];
      if (above())
        window_from_above(window, opening, wall);
      else
        window_from_the_side(window, opening, wall);
    }
  }

  void window_from_above(const WindowSection& window, const Rectangle& opening, const WallPlace& wall) {
    const Eigen::Vector3d out = kWallThick_m * wall.to_wall;
    for (const double side : {-1.0, 1.0}) {
      const Point inner = opening.at(side, 0), outer = inner + side * kWallBeside_m * wall.right;
      add(Kind::wall, "", {inner, outer, inner + out, outer + out});
    }
    add(Kind::opening, window.name,
        {opening.at(-1, 0), opening.at(1, 0), opening.at(-1, 0) + out, opening.at(1, 0) + out});
    const double wide_m = 2.0 * opening.half_u.norm();
    const auto cover = [&](double from_m, double to_m) {
      if (to_m <= from_m) return;
      const Point from = opening.at(2.0 * from_m / wide_m - 1.0, 0),
                  to = opening.at(2.0 * to_m / wide_m - 1.0, 0);
      add(Kind::cover, "", {from, to, from + 0.5 * out, to + 0.5 * out});
    };
    cover(0.0, window.cover_left.si);
    cover(wide_m - window.cover_right.si, wide_m);
    if (!window.curtain.empty()) {
      const Eigen::Vector3d inside = -kCurtainInside_m * wall.to_wall;
      view_.things.push_back({Kind::curtain,
                              window.curtain,
                              {seen(opening.at(-1, 0) + inside), seen(opening.at(1, 0) + inside)},
                              false});
    }
    measure({0.0, 0.0}, seen(wall.distance_m * wall.to_wall));
  }

  void window_from_the_side(const WindowSection& window, const Rectangle& opening, const WallPlace& wall) {
    if (is_behind(wall.to_wall)) return;
    if (across(wall.to_wall) < 0.9) {  // faced, or aslant
      add(Kind::opening, window.name, corners(opening));
      if (!seen_edge_on(wall.to_wall)) return;
    } else {
      const Eigen::Vector3d out = kWallThick_m * wall.to_wall;
      const auto piece = [&](Kind kind, const std::string& name, double low_m, double high_m) {
        const Point low(opening.centre.x(), opening.centre.y(), low_m), high(low.x(), low.y(), high_m);
        add(kind, name, {low, high, low + out, high + out});
      };
      const double sill_m = opening.at(0, -1).z(), head_m = opening.at(0, 1).z();
      if (sill_m > 0.01 * lowest_cm_) piece(Kind::wall, "", 0.01 * lowest_cm_, sill_m);
      piece(Kind::opening, window.name, std::max(sill_m, 0.01 * lowest_cm_), head_m);
      if (window.cover_bottom.si > 0.0) piece(Kind::cover, "", sill_m, sill_m + window.cover_bottom.si);
      if (window.cover_top.si > 0.0) piece(Kind::cover, "", head_m - window.cover_top.si, head_m);
      piece(Kind::wall, "", head_m, std::min(head_m + kWallAbove_m, set_.room.ceiling_m));
    }
    const double at_cm = seen(opening.centre)[0], inward = at_cm > 0.0 ? -1.0 : 1.0;
    const double sill_cm = 100.0 * opening.at(0, -1).z();
    if (sill_cm >= lowest_cm_) measure_height(at_cm + inward * kBeside_cm, sill_cm);
    measure_height(at_cm + 2.0 * inward * kBeside_cm, 100.0 * opening.at(0, 1).z());
  }

  void table() {
    if (!set_.table) return;
    add(Kind::table, above() ? "table" : "table top " + text_of(floor_cm_) + " above the floor",
        set_.table->corners);
    const FlatPath& outline = view_.things.back().path_cm;
    if (!above()) return;
    const auto [left, right] = std::ranges::minmax(outline, {}, [](const Spot2& p) { return p[0]; });
    const auto [low, high] = std::ranges::minmax(outline, {}, [](const Spot2& p) { return p[1]; });
    const double below = low[1] - kBeside_cm, beside = right[0] + kBeside_cm;
    measure({left[0], below}, {0.0, below});
    measure({0.0, below}, {right[0], below});
    measure({beside, low[1]}, {beside, 0.0});
    measure({beside, 0.0}, {beside, high[1]});
  }

  void items() {
    for (const PlacedItem& placed : set_.placing.items())
      if (placed.section->subject)
        add(Kind::food, placed.section->name, corners_of(placed.item));
      else  // named once: from the side, small things crowd
        add(Kind::prop, above() ? placed.section->name : "", corners_of(placed.item));
  }

  void lamps() {
    for (const PlacedLamp& lamp : set_.lamps) {
      const Mesh mesh = mesh_of(lamp.shape);
      add(Kind::lamp, lamp.section->name, mesh.corners);
      const Spot2 middle = seen(centre_of(lamp.shape));
      if (above())
        measure({0.0, 0.0}, middle);
      else if (view_.from == ViewFrom::six)
        measure_height(middle[0], middle[1]);
    }
  }

  void sheets() {
    for (const PlacedSheet& sheet : set_.sheets) {
      const bool board = sheet.kind == "board";
      const Kind kind = !board                                                      ? Kind::cloth
                        : is_dark(static_cast<const BoardSection&>(*sheet.section)) ? Kind::dark_board
                                                                                    : Kind::board;
      bool first = true;
      for (const Rectangle& front : sheet.fronts) {
        add(kind, first ? sheet.name : "", thick(front, sheet.thickness_m));
        first = false;
      }
      measure_sheet(sheet);
    }
  }

  void measure_sheet(const PlacedSheet& sheet) {
    const Rectangle& front = sheet.fronts.front();
    const bool folded = sheet.fronts.size() > 1;
    const Point foot = folded ? common_foot(sheet) : front.at(0, -1);
    if (above()) return measure({0.0, 0.0}, seen({foot.x(), foot.y(), 0.0}));
    const Direction facing = folded ? Direction(-foot.normalized()) : front.normal();
    if (!seen_edge_on({facing.x(), facing.y(), 0.0})) return;
    const FlatPath& path = view_.things.back().path_cm;
    const auto outermost = std::ranges::max_element(path, {}, [](const Spot2& p) { return std::abs(p[0]); });
    const double outward = (*outermost)[0] < 0.0 ? -1.0 : 1.0, at = (*outermost)[0] + outward * kBeside_cm;
    const double low_cm = 100.0 * front.at(0, -1).z(), high_cm = 100.0 * front.at(0, 1).z();
    measure_height(at, high_cm);
    measure_height(at + outward * kBeside_cm, low_cm);
  }

  /// Where the wings of a folded board meet, below.
  static Point common_foot(const PlacedSheet& sheet) {
    const Rectangle &one = sheet.fronts[0], &other = sheet.fronts[1];
    Point nearest = one.at(-1, -1);
    double least = 1e9;
    for (const double u : {-1.0, 1.0})
      for (const double w : {-1.0, 1.0})
        if (const double gap = (one.at(u, -1) - other.at(w, -1)).norm(); gap < least)
          least = gap, nearest = one.at(u, -1);
    return nearest;
  }

  void camera() {
    const Point looks_at = camera_looks_at(d_.camera, set_.subject_top_m);
    const Point lens = looks_at + d_.camera.distance.si * toward_camera(d_.camera);
    const Spot2 at = seen(lens), target = seen(looks_at);
    view_.things.push_back({Kind::axis, "", {at, target}, false});
    view_.things.push_back({Kind::camera, "camera", camera_body(at, target), true});
    const double off_cm = std::hypot(lens.x(), lens.y()) * 100.0;
    if (above()) {
      if (off_cm > 1.0) measure({0.0, 0.0}, at);
      return;
    }
    const Direction stands = to_clock(d_.camera.clock);
    if (seen_edge_on(off_cm > 1.0 ? stands : Direction(1.0, 0.0, 0.0)))
      measure_height(at[0] + (at[0] < 0.0 ? -1.0 : 1.0) * 2.8 * kBeside_cm, at[1]);
  }

  /// A body behind the lens, along the way it looks; end-on a square.
  static FlatPath camera_body(const Spot2& lens, const Spot2& target) {
    constexpr double kLens_cm = 5.0, kBody_cm = 12.0, kNarrow_cm = 3.0, kWide_cm = 6.5;
    Spot2 back{lens[0] - target[0], lens[1] - target[1]};
    const double length = std::hypot(back[0], back[1]);
    if (length < 5.0) {
      return {{lens[0] - kWide_cm, lens[1] - kWide_cm},
              {lens[0] + kWide_cm, lens[1] - kWide_cm},
              {lens[0] + kWide_cm, lens[1] + kWide_cm},
              {lens[0] - kWide_cm, lens[1] + kWide_cm}};
    }
    back = {back[0] / length, back[1] / length};
    const auto spot = [&](double along, double aside) {
      return Spot2{lens[0] + along * back[0] - aside * back[1], lens[1] + along * back[1] + aside * back[0]};
    };
    return {spot(0, -kNarrow_cm),      spot(0, kNarrow_cm),        spot(kLens_cm, kNarrow_cm),
            spot(kLens_cm, kWide_cm),  spot(kBody_cm, kWide_cm),   spot(kBody_cm, -kWide_cm),
            spot(kLens_cm, -kWide_cm), spot(kLens_cm, -kNarrow_cm)};
  }

  void bound() {
    FlatPath all;
    for (const SeenThing& thing : view_.things)
      all.insert(all.end(), thing.path_cm.begin(), thing.path_cm.end());
    for (const SeenMeasure& m : view_.measures) all.insert(all.end(), {m.from_cm, m.to_cm});
    const auto [left, right] = std::ranges::minmax(all, {}, [](const Spot2& p) { return p[0]; });
    const auto [low, high] = std::ranges::minmax(all, {}, [](const Spot2& p) { return p[1]; });
    const double margin = above() ? kClockMargin_cm : kMargin_cm;
    view_.left_cm = left[0] - margin;
    view_.right_cm = right[0] + margin;
    view_.low_cm = above() ? low[1] - margin : lowest_cm_;
    view_.high_cm = high[1] + margin;
  }

  const PlacedSet& set_;
  const Description& d_;
  SetView view_;
  double floor_cm_ = 0.0, lowest_cm_ = 0.0;
};

}  // namespace

SetView view_of_set(const PlacedSet& set, ViewFrom from) { return ViewMaker(set, from).made(); }

}  // namespace fillside
