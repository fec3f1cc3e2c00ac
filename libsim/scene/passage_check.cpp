#include "libsim/scene/passage_check.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>

#include "libsim/geometry/crossing.h"
#include "libsim/geometry/inside.h"
#include "libsim/scene/item_overlap.h"
#include "libsim/scene/limits.h"

namespace fillside {
namespace {

constexpr double kTouch_m = 1e-3;           // what only touches may stand so
constexpr double kDeepestOverlap_m = 0.01;  // food is soft, and stand-ins are a little too round

/// Nobody reads on; and a file of nothing but crowded things must not take minutes.
bool enough(const std::vector<Problem>& problems) { return problems.size() > kMostProblems; }

bool apart(const Bounds& a, const Bounds& b) {
  return (a.low.array() > b.high.array()).any() || (b.low.array() > a.high.array()).any();
}

Bounds bounds_of_points(std::span<const Point> points) {
  Bounds bounds;
  for (const Point& point : points) bounds.include(point);
  return bounds;
}

std::vector<Rectangle> shrunk_faces(std::vector<Rectangle> faces) {
  for (Rectangle& face : faces) face = shrunk(face, kTouch_m);
  return faces;
}

/// How far the points must be moved along a direction until all of them are past the obstacle.
double way_past(std::span<const Point> points, std::span<const Point> obstacle, const Direction& direction) {
  double nearest_m = 1e30, farthest_m = -1e30;
  for (const Point& point : points) nearest_m = std::min(nearest_m, point.dot(direction));
  for (const Point& point : obstacle) farthest_m = std::max(farthest_m, point.dot(direction));
  return farthest_m - nearest_m;
}

/// True when the plane of one of the faces has the two on its two sides, but for a touch.
bool beside(std::span<const Rectangle> faces, std::span<const Point> points,
            std::span<const Point> obstacle) {
  return std::ranges::any_of(faces, [&](const Rectangle& face) {
    return way_past(points, obstacle, face.normal()) <= kTouch_m ||
           way_past(points, obstacle, -face.normal()) <= kTouch_m;
  });
}

/// The shorter of the two ways out that a photographer would take: back from the dish, or to a side.
std::string way_out(std::span<const Point> points, std::span<const Point> obstacle) {
  Point middle = Point::Zero();
  for (const Point& point : points) middle += point / static_cast<double>(points.size());
  const double from_dish_m = std::hypot(middle.x(), middle.y());
  const Direction outward = from_dish_m > 1e-9
                                ? Direction(middle.x() / from_dish_m, middle.y() / from_dish_m, 0.0)
                                : to_clock(Clock{12});
  const Direction right(outward.y(), -outward.x(), 0.0);
  const double back_m = way_past(points, obstacle, outward);
  const double left_m = way_past(points, obstacle, -right), right_m = way_past(points, obstacle, right);
  if (back_m <= std::min(left_m, right_m))
    return fmt::format("move it {} farther from the dish", length_text_up(back_m));
  return fmt::format("move it {} to the {}, seen from the dish", length_text_up(std::min(left_m, right_m)),
                     left_m < right_m ? "left" : "right");
}

std::string_view place_key(const FaultList& faults) {
  return first_said(faults, {"distance", "x", "y", "clock"});
}

bool goes_through(std::span<const Rectangle> faces, const Item& item) {
  for (const ItemPart& part : item.parts)
    for (const Rectangle& face : faces)
      if (crosses(face, part.mesh) || is_inside(part.mesh, face.centre)) return true;
  return false;
}

void check_sheet_and_items(const PlacedSet& set, const PlacedSheet& sheet, std::vector<Problem>& problems) {
  const auto corners = sheet.corners();
  const auto faces = shrunk_faces(sheet.faces());
  const Bounds box = bounds_of_points(corners);
  for (const PlacedItem& item : set.placing.items()) {
    if (enough(problems)) return;
    if (apart(box, item.bounds)) continue;
    const auto obstacle = corners_of(item.item);
    if (beside(faces, corners, obstacle) || !goes_through(faces, item.item)) continue;
    const FaultList faults = faults_of(sheet, problems);
    faults.error(place_key(faults),
                 fmt::format("it goes through the {} {}", item.section->subject ? "food" : "prop",
                             in_quotes(item.section->name)),
                 way_out(corners, obstacle));
  }
}

void check_sheet_and_table(const PlacedSet& set, const PlacedSheet& sheet, std::vector<Problem>& problems) {
  if (!set.table) return;
  // Fronts only: the back edge of a board that leans back dips a little into what it stands on.
  const auto fronts = shrunk_faces(sheet.fronts);
  const auto through = [&](const Rectangle& front) {
    return crosses(front, *set.table) || is_inside(*set.table, front.centre);
  };
  if (!std::ranges::any_of(fronts, through)) return;
  const FaultList faults = faults_of(sheet, problems);
  const auto corners = sheet.corners();
  const double sunk_m = -bounds_of_points(corners).low.z();
  if (sheet.on_table)
    return faults.error(first_said(faults, {"z", "lean", "distance", "x"}), "it goes through the table top",
                        fmt::format("raise it by {}", length_text_up(sunk_m)));
  faults.error(first_said(faults, {"distance", "x", "y", "stands"}),
               "it stands on the floor and goes through the table top", way_out(corners, set.table->corners));
}

void check_sheets(const PlacedSheet& sheet, std::span<const PlacedSheet> earlier,
                  std::vector<Problem>& problems) {
  const auto corners = sheet.corners();
  const auto faces = shrunk_faces(sheet.faces());
  const Bounds box = bounds_of_points(corners);
  for (const PlacedSheet& other : earlier) {
    if (enough(problems)) return;
    const auto other_corners = other.corners();
    if (apart(box, bounds_of_points(other_corners))) continue;
    const auto other_faces = shrunk_faces(other.faces());
    if (beside(faces, corners, other_corners) || beside(other_faces, corners, other_corners)) continue;
    const auto meets = [&](const Rectangle& face) {
      return std::ranges::any_of(other_faces, [&](const Rectangle& o) { return crosses(face, o); });
    };
    if (!std::ranges::any_of(faces, meets)) continue;
    const FaultList faults = faults_of(sheet, problems);
    faults.error(place_key(faults),
                 fmt::format("it goes through the {} {}", other.kind, in_quotes(other.name)),
                 way_out(corners, other_corners));
  }
}

void check_item_and_table(const PlacedSet& set, const PlacedItem& item, std::vector<Problem>& problems) {
  if (!set.table) return;
  const Bounds box = item.bounds, table = bounds_of(*set.table);
  if (apart(box, table) || box.low.z() > -kTouch_m) return;
  const FaultList faults = faults_of(item, problems);
  faults.error("z", fmt::format("it is sunk {} into the table", length_text_up(-box.low.z())),
               fmt::format("raise it by {}, or leave z out", length_text_up(-box.low.z())));
}

void check_items(const PlacedSet& set, std::vector<Problem>& problems) {
  const auto& items = set.placing.items();
  std::vector<ItemHull> hulls;
  for (const PlacedItem& item : items) hulls.push_back(hull_of(item));
  for (std::size_t i = 0; i < items.size(); ++i)
    for (std::size_t j = 0; j < i && !enough(problems); ++j) {
      const double depth_m = overlap_m(hulls[i], hulls[j]);
      if (depth_m <= kDeepestOverlap_m || stands_on(set.description, *items[i].section, *items[j].section) ||
          stands_on(set.description, *items[j].section, *items[i].section))
        continue;
      const FaultList faults = faults_of(items[i], problems);
      faults.warning(
          place_key(faults),
          fmt::format("it stands {} deep in {}", length_text_up(depth_m), in_quotes(items[j].section->name)),
          "move one of them away, or put one on the other with on = ...");
    }
}

}  // namespace

void check_passages(const PlacedSet& set, std::vector<Problem>& problems) {
  for (const PlacedItem& item : set.placing.items()) check_item_and_table(set, item, problems);
  for (std::size_t i = 0; i < set.sheets.size(); ++i) {
    check_sheet_and_table(set, set.sheets[i], problems);
    check_sheet_and_items(set, set.sheets[i], problems);
    check_sheets(set.sheets[i], std::span(set.sheets).first(i), problems);
  }
  check_items(set, problems);
}

}  // namespace fillside
