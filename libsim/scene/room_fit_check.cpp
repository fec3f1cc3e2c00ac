#include "libsim/scene/room_fit_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

namespace fillside {
namespace {

constexpr double kSlack_m = 1e-6;  // what stands right against a wall fits
/// A cloth needs a little air before a wall or a pane: two surfaces in one plane cannot be told apart by
/// rays.
constexpr double kClothGap_m = 1e-3;

std::string wall_name(const RoomPlace& room, std::size_t wall) {
  if (wall == 0) return "the wall of the first window";
  return fmt::format("the wall at {} o'clock", to_text(clock_of(room.walls[wall].to_wall)));
}

/// The key that puts a thing so far toward a wall.
std::string_view key_toward(const FaultList& faults, const Direction& to_wall) {
  if (faults.said("distance")) return "distance";
  const bool sideways = std::abs(to_wall.x()) > std::abs(to_wall.y());
  if (sideways) return first_said(faults, {"x", "width", "sheet", "y", "clock", "on"});
  return first_said(faults, {"y", "depth", "width", "sheet", "x", "clock", "on"});
}

/// A thing as corners, the air it needs before a wall, and how far it may go into the floor.
struct Extent {
  std::span<const Point> corners;
  double wall_gap_m = 0.0, floor_slack_m = 0.0;
};

struct Reach {
  double least_m, most_m;
};
Reach reach_along(std::span<const Point> corners, const Direction& direction) {
  Reach reach{1e30, -1e30};
  for (const Point& corner : corners) {
    reach.least_m = std::min(reach.least_m, corner.dot(direction));
    reach.most_m = std::max(reach.most_m, corner.dot(direction));
  }
  return reach;
}

void check_wall(const FaultList& faults, const Extent& extent, const RoomPlace& room, std::size_t index) {
  const WallPlace& wall = room.walls[index];
  const Reach reach = reach_along(extent.corners, wall.to_wall);
  const double beyond_m = reach.most_m - (wall.distance_m - extent.wall_gap_m);
  if (beyond_m <= kSlack_m) return;
  const double room_m = wall.distance_m + room.walls[(index + 2) % 4].distance_m;
  const std::string name = wall_name(room, index), far = length_text_up(beyond_m);
  std::string message = fmt::format("it goes {} through {}", far, name);
  if (reach.least_m >= wall.distance_m) message = "it stands outside the room, behind " + name;
  if (reach.most_m <= wall.distance_m + kSlack_m) message = "it touches " + name;
  if (reach.most_m - reach.least_m > room_m)
    return faults.error(key_toward(faults, wall.to_wall), message, "make it smaller, or the room larger");
  faults.error(key_toward(faults, wall.to_wall), message,
               fmt::format("move it at least {} {}", far,
                           reach.least_m > 0.0 ? "nearer to the dish" : "away from that wall"));
}

void check_up_and_down(const FaultList& faults, const Extent& extent, const RoomPlace& room) {
  const Reach reach = reach_along(extent.corners, Direction::UnitZ());
  const double above_m = reach.most_m - room.ceiling_m, below_m = room.floor_m - reach.least_m;
  if (above_m > kSlack_m)
    faults.error(
        first_said(faults, {"z", "foot_gap", "drop", "diameter", "height", "sheet", "distance", "x"}),
        fmt::format("it goes {} through the ceiling", length_text_up(above_m)),
        fmt::format("bring its top down by {}", length_text_up(above_m)));
  if (below_m > extent.floor_slack_m + kSlack_m)
    faults.error(first_said(faults, {"z", "lean", "height"}),
                 fmt::format("it goes {} through the floor", length_text_up(below_m)),
                 fmt::format("raise it by {}", length_text_up(below_m)));
}

void check_fit(const FaultList& faults, const Extent& extent, const RoomPlace& room) {
  for (std::size_t wall = 0; wall < room.walls.size(); ++wall) check_wall(faults, extent, room, wall);
  check_up_and_down(faults, extent, room);
}

void check_points(const PlacedSet& set, std::vector<Problem>& problems) {
  const Description& d = set.description;
  const Point dish = dish_place(set.subject_top_m);
  for (const MeshSection& mesh : d.meshes)
    if (mesh.used)
      check_within({mesh, heading_text("mesh", tame(mesh.name)), problems}, set.room,
                   set.placing.placement_of(mesh.spot, mesh.turn, mesh.on).translation(), "its foot");
  for (const MeterSection& meter : d.meters)
    check_within({meter, heading_text("meter", tame(meter.name)), problems}, set.room,
                 place_spot(meter.spot, dish), "it");
  for (const PlaneSection& plane : d.planes)
    check_within({plane, heading_text("plane", tame(plane.name)), problems}, set.room,
                 place_spot(plane.spot, Point::Zero()), "its middle");
}

}  // namespace

bool check_within(const FaultList& faults, const RoomPlace& room, const Point& point, std::string_view what) {
  for (std::size_t i = 0; i < room.walls.size(); ++i) {
    const WallPlace& wall = room.walls[i];
    const double beyond_m = point.dot(wall.to_wall) - wall.distance_m;
    if (beyond_m < -kSlack_m) continue;
    faults.error(key_toward(faults, wall.to_wall),
                 fmt::format("{} lies in or behind {}", what, wall_name(room, i)),
                 fmt::format("move it more than {} nearer to the dish",
                             length_text_up(std::max(beyond_m, kClothGap_m))));
    return false;
  }
  const double above_m = point.z() - room.ceiling_m, below_m = room.floor_m - point.z();
  if (above_m < -kSlack_m && below_m < -kSlack_m) return true;
  faults.error(
      first_said(faults, {"z", "distance", "x"}),
      fmt::format("{} lies {}", what, above_m > below_m ? "in or over the ceiling" : "in or under the floor"),
      above_m > below_m
          ? fmt::format("lower it by more than {}", length_text_up(std::max(above_m, kClothGap_m)))
          : fmt::format("raise it by more than {}", length_text_up(std::max(below_m, kClothGap_m))));
  return false;
}

void check_room_fit(const PlacedSet& set, std::vector<Problem>& problems) {
  if (set.table) check_fit({set.description.table, "table", problems}, {set.table->corners}, set.room);
  for (const PlacedItem& item : set.placing.items()) {
    const auto corners = corners_of(item.item);
    check_fit(faults_of(item, problems), {corners}, set.room);
  }
  for (const PlacedSheet& sheet : set.sheets) {
    const auto corners = sheet.corners();
    const bool cloth = sheet.thickness_m <= 0.0;
    // A board leaning back pivots about its lower front edge: its back edge dips by less than its thickness.
    check_fit(faults_of(sheet, problems), {corners, cloth ? kClothGap_m : 0.0, sheet.thickness_m}, set.room);
  }
  for (const PlacedLamp& lamp : set.lamps) {
    const auto corners = lamp.corners(set.room);
    check_fit(faults_of(lamp, problems), {corners, kClothGap_m}, set.room);
  }
  check_points(set, problems);
}

}  // namespace fillside
