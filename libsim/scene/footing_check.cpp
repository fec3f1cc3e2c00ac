#include "libsim/scene/footing_check.h"

#include <fmt/format.h>

#include <algorithm>

namespace fillside {
namespace {

constexpr double kSlack_m = 1e-3;

void check_folds(const PlacedSet& set, std::vector<Problem>& problems) {
  for (const BoardSection& board : set.description.boards)
    if (board.used && board.fold && board.lean.si != 0.0)
      FaultList(board, heading_text("board", tame(board.name)), problems)
          .error("lean", "a folded board stands straight, it cannot lean", "leave lean out, or fold");
}

/// The middle of what the sheet stands on.
Point foot_of(const PlacedSheet& sheet) {
  Point foot = Point::Zero();
  for (const Rectangle& front : sheet.fronts)
    foot += front.at(0, -1) / static_cast<double>(sheet.fronts.size());
  return foot;
}

/// A thing that is said to stand on the table and tells no height of its own.
void check_beyond_edge(const FaultList& faults, const PlacedSet& set, const Point& foot,
                       std::string_view remedy) {
  if (!set.table || faults.said("z") || set.over_table(foot) || !set.room.contains(foot)) return;
  faults.warning(first_said(faults, {"distance", "x", "y", "clock"}),
                 "it stands beyond the table's edge and hangs in the air", std::string(remedy));
}

void check_below_top(const FaultList& faults, const PlacedSet& set, const Point& foot, double top_m) {
  if (!set.table || top_m > -kSlack_m || !set.over_table(foot)) return;
  faults.warning("z", fmt::format("it lies under the table, {} below its top", length_text(-top_m)),
                 "leave z out to put it on the table");
}

void check_meshes_and_meters(const PlacedSet& set, std::vector<Problem>& problems) {
  constexpr double kOften_m =
      0.01;  // a model's own origin, or a sensor's thickness, may lie a little below its foot
  for (const MeshSection& mesh : set.description.meshes) {
    if (!mesh.used) continue;
    const FaultList faults(mesh, heading_text("mesh", tame(mesh.name)), problems);
    const Point foot = set.placing.placement_of(mesh.spot, mesh.turn, mesh.on).translation();
    if (mesh.on.empty()) check_beyond_edge(faults, set, foot, "move it nearer, or make the table larger");
    if (faults.said("z")) check_below_top(faults, set, foot, foot.z() + kOften_m);
  }
  for (const MeterSection& meter : set.description.meters) {
    const Point at = place_spot(meter.spot, dish_place(set.subject_top_m));
    check_below_top({meter, heading_text("meter", tame(meter.name)), problems}, set, at, at.z() + kOften_m);
  }
}

}  // namespace

void check_footings(const PlacedSet& set, std::vector<Problem>& problems) {
  check_folds(set, problems);
  for (const PlacedSheet& sheet : set.sheets) {
    if (!sheet.on_table) continue;
    const FaultList faults = faults_of(sheet, problems);
    const Point foot = foot_of(sheet);
    check_beyond_edge(faults, set, foot,
                      "write stands = \"floor\", move it nearer, or make the table larger");
    const std::vector<Point> corners = sheet.corners();
    const auto highest = std::ranges::max_element(corners, {}, [](const Point& p) { return p.z(); });
    check_below_top(faults, set, foot, highest->z());
  }
  for (const PlacedItem& item : set.placing.items()) {
    const FaultList faults = faults_of(item, problems);
    const Point foot = item.placement.translation();
    if (item.section->on.empty())
      check_beyond_edge(faults, set, foot, "move it nearer, or make the table larger");
    check_below_top(faults, set, foot, item.bounds.high.z());
  }
  check_meshes_and_meters(set, problems);
}

}  // namespace fillside
