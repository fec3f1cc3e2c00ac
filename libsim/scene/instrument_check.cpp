#include "libsim/scene/instrument_check.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/geometry/inside.h"

namespace fillside {
namespace {

bool lies_in(const PlacedSheet& sheet, const Point& point) {
  constexpr double kCloth_m = 0.5e-3;
  return std::ranges::any_of(sheet.fronts, [&](const Rectangle& front) {
    const double before_m = (point - front.centre).dot(front.normal());
    return front.coordinates_of(point).cwiseAbs().maxCoeff() <= 1.0 && before_m <= kCloth_m &&
           before_m >= -std::max(sheet.thickness_m, kCloth_m);
  });
}

bool lies_in(const PlacedItem& item, const Point& point) {
  return std::ranges::any_of(item.item.parts,
                             [&](const ItemPart& part) { return is_inside(part.mesh, point); });
}

/// What the point is inside of, as a message names it; empty when it is in the open.
std::string what_is_around(const PlacedSet& set, const Point& point, bool subject_there) {
  for (const PlacedItem& item : set.placing.items())
    if ((subject_there || !item.section->subject) && lies_in(item, point))
      return in_quotes(item.section->name);
  for (const PlacedSheet& sheet : set.sheets)
    if (lies_in(sheet, point)) return fmt::format("the {} {}", sheet.kind, in_quotes(sheet.name));
  for (const PlacedLamp& lamp : set.lamps)
    if (const auto* ball = std::get_if<Sphere>(&lamp.shape);
        ball && (point - ball->centre).norm() <= ball->radius_m)
      return fmt::format("the lamp {}", in_quotes(lamp.section->name));
  return set.table && is_inside(*set.table, point) ? "the table" : "";
}

/// How far to go in a direction, in whole centimetres, to come out of what is around the point.
std::string way_into_the_open(const PlacedSet& set, const Point& from, const Direction& direction,
                              bool subject_there) {
  constexpr int kFarthest_cm = 300;
  int way_cm = 1;
  while (way_cm < kFarthest_cm &&
         !what_is_around(set, from + 0.01 * way_cm * direction, subject_there).empty())
    ++way_cm;
  return fmt::format("{} cm", way_cm);
}

/// Outside the room; the finds within it would only repeat that.
bool check_camera_in_room(const FaultList& faults, const RoomPlace& room, const Point& lens) {
  if (lens.z() >= room.ceiling_m)
    faults.error("distance", fmt::format("it is {} above the table, over the ceiling", length_text(lens.z())),
                 "bring it closer or lower its elevation");
  else if (std::ranges::any_of(room.walls,
                               [&](const WallPlace& w) { return lens.dot(w.to_wall) >= w.distance_m; }))
    faults.error("distance", "it stands outside the room",
                 "bring it closer, turn it, or make the room larger");
  else
    return true;
  return false;
}

void check_camera(const PlacedSet& set, std::vector<Problem>& problems) {
  const CameraSection& camera = set.description.camera;
  const FaultList faults(camera, "camera", problems);
  const Point lens = camera_looks_at(camera, set.subject_top_m) + camera.distance.si * toward_camera(camera);
  const bool in_room = check_camera_in_room(faults, set.room, lens);
  if (lens.z() < 0.0 && set.table)
    return faults.error("look_z", fmt::format("it is {} below the table top", length_text(-lens.z())),
                        "raise look_z or the elevation");
  if (!in_room) return;
  if (const std::string around = what_is_around(set, lens, true); !around.empty())
    faults.error(
        first_said(faults, {"distance", "look_z", "look_y", "look_x"}), "it is inside " + around,
        fmt::format("move it {} farther away", way_into_the_open(set, lens, toward_camera(camera), true)));
}

void check_meter(const PlacedSet& set, const MeterSection& meter, std::vector<Problem>& problems) {
  const FaultList faults(meter, heading_text("meter", tame(meter.name)), problems);
  const bool subject_there = meter.subject ? *meter.subject == "there" : !is_at_the_dish(meter.spot);
  const Point place = place_spot(meter.spot, dish_place(set.subject_top_m));
  const std::string around = what_is_around(set, place, subject_there);
  if (around.empty()) return;
  const std::string raise =
      "raise it by " + way_into_the_open(set, place, Direction::UnitZ(), subject_there) + " with z";
  faults.error(first_said(faults, {"z", "distance", "x", "y", "subject"}), "it is inside " + around,
               subject_there && around.starts_with('"') ? raise + ", or write subject = \"away\"" : raise);
}

}  // namespace

void check_instruments(const PlacedSet& set, std::vector<Problem>& problems) {
  check_camera(set, problems);
  for (const MeterSection& meter : set.description.meters) check_meter(set, meter, problems);
}

}  // namespace fillside
