#include "libsim/scene/placed_set.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/panels.h"

namespace fillside {

std::vector<Rectangle> PlacedSheet::faces() const {
  std::vector<Rectangle> all = fronts;
  if (thickness_m > 0.0)
    for (const Rectangle& front : fronts) all.push_back(back_of(front, thickness_m));
  return all;
}

std::vector<Point> PlacedSheet::corners() const {
  std::vector<Point> all;
  for (const Rectangle& face : faces())
    for (const double u : {-1.0, 1.0})
      for (const double v : {-1.0, 1.0}) all.push_back(face.at(u, v));
  return all;
}

std::vector<Point> PlacedLamp::corners(const RoomPlace& room) const {
  if (const auto* ball = std::get_if<Sphere>(&shape)) {
    std::vector<Point> all;
    for (const WallPlace& wall : room.walls) all.push_back(ball->centre + ball->radius_m * wall.to_wall);
    for (const double up : {-1.0, 1.0})
      all.push_back(ball->centre + up * ball->radius_m * Direction::UnitZ());
    return all;
  }
  return mesh_of(shape).corners;
}

PlacedSet::PlacedSet(const Description& d) : description(d), room(place_room(d)), placing(d) {
  const double table_m = d.table.height.si;
  for (const BoardSection& board : d.boards)
    if (board.used)
      sheets.push_back({&board, "board", board.name, place_board(board, table_m), board.thickness.si,
                        board.stands == "table"});
  for (const DiffuserSection& cloth : d.diffusers)
    if (cloth.used)
      sheets.push_back(
          {&cloth, "diffuser", cloth.name, {place_diffuser(cloth, table_m)}, 0.0, cloth.stands == "table"});
  for (const LampSection& lamp : d.lamps)
    if (lamp.used) lamps.push_back({&lamp, place_lamp(lamp, room)});
  if (d.table.used) table = place_table(d.table);
  for (const PlacedItem& placed : placing.items())
    if (placed.section->subject) subject_top_m = std::max(subject_top_m, placed.bounds.high.z());
}

bool PlacedSet::over_table(const Point& point) const {
  const TableSection& t = description.table;
  return std::abs(point.x() - t.x.si) <= 0.5 * t.width.si + 1e-9 &&
         std::abs(point.y() - t.y.si) <= 0.5 * t.depth.si + 1e-9;
}

FaultList faults_of(const PlacedSheet& sheet, std::vector<Problem>& problems) {
  return {*sheet.section, heading_text(sheet.kind, tame(sheet.name)), problems};
}

FaultList faults_of(const PlacedLamp& lamp, std::vector<Problem>& problems) {
  return {*lamp.section, heading_text("lamp", tame(lamp.section->name)), problems};
}

FaultList faults_of(const PlacedItem& item, std::vector<Problem>& problems) {
  return {*item.section, heading_text(item.section->subject ? "food" : "prop", tame(item.section->name)),
          problems};
}

std::vector<Point> corners_of(const Item& item) {
  std::vector<Point> all;
  for (const ItemPart& part : item.parts)
    all.insert(all.end(), part.mesh.corners.begin(), part.mesh.corners.end());
  return all;
}

std::string_view first_said(const FaultList& faults, std::initializer_list<std::string_view> keys) {
  const auto found = std::ranges::find_if(keys, [&](std::string_view key) { return faults.said(key); });
  return found == keys.end() ? std::string_view{} : *found;
}

}  // namespace fillside
