#include "libsim/scene/placing.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/panels.h"
#include "libsim/matter/catalogue.h"

namespace fillside {
namespace {

constexpr double kUsualWindowDistance_m = 0.8;
constexpr double kTableThickness_m = 0.03;
constexpr double kLeastMeterHeight_m = 0.03;
Direction up() { return {0.0, 0.0, 1.0}; }

/// Right as one faces a horizontal direction.
Direction right_of(const Direction& forward) { return {forward.y(), -forward.x(), 0.0}; }

WallPlace place_wall(const Direction& to_wall, double distance_m, double left_m, double right_m,
                     double floor_m, double ceiling_m) {
  const Direction right = right_of(to_wall);
  const Point centre =
      distance_m * to_wall + 0.5 * (left_m + right_m) * right + 0.5 * (floor_m + ceiling_m) * up();
  // u to the right as one faces it, v up: u x v points into the room.
  return {to_wall, distance_m,
          right,   left_m,
          right_m, {centre, 0.5 * (right_m - left_m) * right, 0.5 * (ceiling_m - floor_m) * up()}};
}

Direction facing(const std::optional<Clock>& faces, const Point& foot) {
  if (faces) return to_clock(*faces);
  const Eigen::Vector3d flat{foot.x(), foot.y(), 0.0};
  return flat.norm() > 1e-9 ? Direction(-flat.normalized()) : Direction{0.0, -1.0, 0.0};
}

/// A standing rectangle from the middle of its lower edge.
Rectangle upright_rectangle(const Point& foot, const Direction& front, double lean, double width_m,
                            double height_m) {
  const Direction edge = std::cos(lean) * up() + std::sin(lean) * front;
  const Direction normal = std::cos(lean) * front - std::sin(lean) * up();
  return {foot + 0.5 * height_m * edge, 0.5 * width_m * edge.cross(normal), 0.5 * height_m * edge};
}

struct StockOpening {
  std::string_view name;
  OpeningSize size;
};
// Common practice: usual clear sizes of home windows; a patio door reaches nearly to the floor.
constexpr std::array kStockOpenings{
    StockOpening{"small", {0.6, 0.9, 0.9}}, StockOpening{"medium", {0.9, 1.2, 0.9}},
    StockOpening{"wide", {1.5, 1.2, 0.9}}, StockOpening{"patio door", {1.8, 2.0, 0.1}}};

Point standing_foot(const Standing& s, double table_height_m) {
  const double ground_m = s.on_floor ? -table_height_m : 0.0;
  return place_spot(s.spot, {0.0, 0.0, ground_m + s.foot_gap.si});
}

Standing standing_of(const BoardSection& board) {
  const auto size =
      sheet_size(board.sheet, board.width, board.height, board.upright).value_or(std::array{0.0, 0.0});
  return {size[0], size[1], board.spot, board.lean, board.faces, board.foot_gap, board.stands == "floor"};
}

}  // namespace

RoomPlace place_room(const Description& d) {
  const RoomSection& room = d.room;
  Clock clock{9.0};
  double distance_m = kUsualWindowDistance_m;
  if (!d.windows.empty()) {
    clock = d.windows.front().clock;
    if (d.windows.front().distance) distance_m = d.windows.front().distance->si;
  }
  const double floor_m = -d.table.height.si, ceiling_m = floor_m + room.height.si;
  const double half = 0.5 * room.width.si, along = room.along.si, behind_m = room.depth.si - distance_m;
  const Direction ahead = to_clock(clock), right = right_of(ahead);
  RoomPlace place;
  place.floor_m = floor_m;
  place.ceiling_m = ceiling_m;
  place.walls = {place_wall(ahead, distance_m, along - half, along + half, floor_m, ceiling_m),
                 place_wall(right, along + half, -distance_m, behind_m, floor_m, ceiling_m),
                 place_wall(-ahead, behind_m, -(along + half), half - along, floor_m, ceiling_m),
                 place_wall(-right, half - along, -behind_m, distance_m, floor_m, ceiling_m)};
  const Point middle = 0.5 * (distance_m - behind_m) * ahead + along * right;
  const Eigen::Vector3d deep = 0.5 * room.depth.si * ahead, wide = half * right;
  place.floor = {middle + floor_m * up(), wide, deep};
  place.ceiling = {middle + ceiling_m * up(), deep, wide};
  return place;
}

bool RoomPlace::contains(const Point& point) const {
  if (point.z() < floor_m || point.z() > ceiling_m) return false;
  return std::ranges::all_of(walls, [&](const WallPlace& w) { return point.dot(w.to_wall) <= w.distance_m; });
}

OpeningSize opening_size(const WindowSection& window) {
  OpeningSize size = kStockOpenings[1].size;
  for (const StockOpening& stock : kStockOpenings)
    if (stock.name == window.size) size = stock.size;
  if (window.width) size.width_m = window.width->si;
  if (window.height) size.height_m = window.height->si;
  if (window.sill) size.sill_m = window.sill->si;
  return size;
}

int pane_count(const WindowSection& window) {
  constexpr std::array<std::string_view, 4> kGlass{"none", "single", "double", "triple"};
  return static_cast<int>(std::ranges::find(kGlass, window.glass) - kGlass.begin());
}

std::size_t wall_of(const WindowSection& window, const RoomPlace& room) {
  const auto nearest = std::ranges::max_element(
      room.walls, {}, [&](const WallPlace& wall) { return wall.to_wall.dot(to_clock(window.clock)); });
  return static_cast<std::size_t>(nearest - room.walls.begin());
}

Rectangle place_opening(const WindowSection& window, const RoomPlace& room) {
  const WallPlace& wall = room.walls[wall_of(window, room)];
  const OpeningSize size = opening_size(window);
  const double middle_m = room.floor_m + size.sill_m + 0.5 * size.height_m;
  return {wall.distance_m * wall.to_wall + window.along.si * wall.right + middle_m * up(),
          0.5 * size.width_m * wall.right, 0.5 * size.height_m * up()};
}

Point place_spot(const Spot& spot, const Point& missing) {
  Point point = missing;
  if (spot.clock || spot.distance) {
    const Direction toward = to_clock(spot.clock.value_or(Clock{12.0}));
    const double distance_m = spot.distance.value_or(metres(0.0)).si;
    point.head<2>() = distance_m * toward.head<2>();
  }
  if (spot.x) point.x() = spot.x->si;
  if (spot.y) point.y() = spot.y->si;
  if (spot.z) point.z() = spot.z->si;
  return point;
}

Mesh place_table(const TableSection& t) {
  const double thickness_m = std::min(kTableThickness_m, 0.5 * t.height.si);
  return box_mesh({t.x.si, t.y.si, -thickness_m}, t.width.si, t.depth.si, thickness_m);
}

double elevation_of(const CameraSection& camera) {
  if (camera.elevation) return camera.elevation->si;
  return camera.view == "overhead" ? 0.5 * kPi : (camera.view == "straight-on" ? 0.0 : 0.25 * kPi);
}

Direction toward_camera(const CameraSection& camera) {
  const double elevation = elevation_of(camera);
  return std::cos(elevation) * to_clock(camera.clock) + std::sin(elevation) * up();
}

Point camera_looks_at(const CameraSection& camera, double subject_top_m) {
  return {camera.look_x.value_or(metres(0)).si, camera.look_y.value_or(metres(0)).si,
          camera.look_z.value_or(metres(0.5 * subject_top_m)).si};
}

Point dish_place(double subject_top_m) {
  return {0.0, 0.0, std::max(kLeastMeterHeight_m, 0.5 * subject_top_m)};
}

bool is_at_the_dish(const Spot& spot) {
  const Point foot = place_spot(spot, Point::Zero());
  return std::hypot(foot.x(), foot.y()) < 1e-9;
}

std::optional<std::array<double, 2>> sheet_size(const std::string& sheet, std::optional<Length> width,
                                                std::optional<Length> height, bool upright) {
  if (const CataloguedSheet* stock = sheet_named(sheet); stock && !sheet.empty()) {
    if (upright) return std::array{stock->short_side_m, stock->long_side_m};
    return std::array{stock->long_side_m, stock->short_side_m};
  }
  if (!width || !height) return std::nullopt;
  return std::array{width->si, height->si};
}

Rectangle place_standing(const Standing& s, double table_height_m) {
  const Point foot = standing_foot(s, table_height_m);
  return upright_rectangle(foot, facing(s.faces, foot), s.lean.si, s.width_m, s.height_m);
}

std::vector<Rectangle> place_board(const BoardSection& board, double table_height_m) {
  const Standing standing = standing_of(board);
  if (!board.fold) return {place_standing(standing, table_height_m)};
  const Point hinge = standing_foot(standing, table_height_m);
  const Direction front = facing(standing.faces, hinge), side = up().cross(front);
  const double half_angle = 0.5 * board.fold->si, wing_m = 0.5 * standing.width_m;
  std::vector<Rectangle> wings;
  for (const double sign : {1.0, -1.0}) {
    const Direction along = std::cos(half_angle) * front + sign * std::sin(half_angle) * side;
    const Direction normal = std::sin(half_angle) * front - sign * std::cos(half_angle) * side;
    wings.push_back(upright_rectangle(hinge + 0.5 * wing_m * along, normal, 0.0, wing_m, standing.height_m));
  }
  return wings;
}

Rectangle place_diffuser(const DiffuserSection& d, double table_height_m) {
  const auto size = sheet_size(d.sheet, d.width, d.height, false).value_or(std::array{0.0, 0.0});
  return place_standing({size[0], size[1], d.spot, d.lean, d.faces, d.foot_gap, d.stands == "floor"},
                        table_height_m);
}

}  // namespace fillside
