#include "libsim/what_if/shadow_edge.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "libsim/sensor/clear_way.h"
#include "libsim/sensor/instruments.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/transport/measure.h"
#include "libsim/view/map_figures.h"

namespace fillside {
namespace {

constexpr int kCells = 96;
constexpr int kReplicates = 8;
constexpr double kShortestLine_m = 0.01;
constexpr double kHalfBreadth_m = 0.25e-3, kFullShadow = 0.01;
constexpr double kFewestCellsOfAnEdge = 16.0, kFinestStep_mm = 0.02;

/// Cells of a strip along the line, the first at its start.
MapPlane strip_along(const EdgeLine& line, int cells) {
  const Eigen::Vector3d half = 0.5 * (line.to - line.from);
  const Direction across = line.normal.cross(half.normalized());
  return {.name = line.name,
          .rectangle = {0.5 * (line.from + line.to), half, kHalfBreadth_m * across},
          .columns = cells,
          .rows = 1};
}

EdgeLine part_of(const EdgeLine& line, double from_mm, double to_mm) {
  const Direction along = (line.to - line.from).normalized();
  return {line.name, line.from + 1e-3 * from_mm * along, line.from + 1e-3 * to_mm * along, line.normal,
          line.stopped_by};
}

/// How far from a point inside the table's rectangle its edge is, in a level direction.
double way_to_the_edge_m(const TableSection& table, const Point& from, const Direction& along) {
  double way = std::numeric_limits<double>::infinity();
  const double low[] = {table.x.si - 0.5 * table.width.si, table.y.si - 0.5 * table.depth.si};
  const double high[] = {table.x.si + 0.5 * table.width.si, table.y.si + 0.5 * table.depth.si};
  for (const int axis : {0, 1}) {
    if (along[axis] > 1e-9) way = std::min(way, (high[axis] - from[axis]) / along[axis]);
    if (along[axis] < -1e-9) way = std::min(way, (low[axis] - from[axis]) / along[axis]);
  }
  return way;
}

constexpr double kHair_m = 1e-3;

/// The line from the foot to the table's edge, cut off where something solid stands on the table.
EdgeLine line_over_the_table(const Scene& scene, const std::string& name, const Point& foot,
                             const Direction& along, double way_to_edge_m) {
  const ClearWay way = clear_way(scene, foot + kHair_m * Direction::UnitZ(), along, way_to_edge_m);
  const double length_m = way.stopped_by.empty() ? way_to_edge_m : std::max(way.length_m - kHair_m, 0.0);
  return {name, foot, foot + length_m * along, Direction::UnitZ(), way.stopped_by};
}

bool casts_on_the_table(ObjectKind kind) {
  return kind == ObjectKind::food || kind == ObjectKind::prop || kind == ObjectKind::board;
}

/// Corners of each named thing, seen from above.
std::map<std::string, std::vector<Point>> corners_of_things(const Scene& scene) {
  std::map<std::string, std::vector<Point>> things;
  for (const Surface& surface : scene.surfaces()) {
    const Object& object = scene.objects()[surface.object];
    if (!casts_on_the_table(object.kind)) continue;
    auto& corners = things[object.name];
    corners.insert(corners.end(), surface.mesh.corners.begin(), surface.mesh.corners.end());
  }
  return things;
}

/// The foot of the thing's side that looks away from the key; a hair behind it, on the table.
Point far_foot(const std::vector<Point>& corners, const Direction& away) {
  Point middle = Point::Zero();
  double farthest = -std::numeric_limits<double>::infinity();
  for (const Point& corner : corners) {
    middle += corner / static_cast<double>(corners.size());
    farthest = std::max(farthest, corner.dot(away));
  }
  Point foot = middle + (farthest - middle.dot(away) + kHair_m) * away;
  foot.z() = 0.0;
  return foot;
}

}  // namespace

EdgeProfile read_profile(const Scene& scene, const Key& key, const EdgeLine& line, int cells,
                         const Effort& effort) {
  constexpr std::uint32_t kSamples = 256;
  const MapPlane strip = strip_along(line, cells);
  // The key comes straight or by a cloth: the rest of the light is not asked for.
  const Measurement measured = measure(scene, strip,
                                       {.samples = kSamples,
                                        .replicates = kReplicates,
                                        .seed = effort.seed,
                                        .threads = effort.threads,
                                        .parts = kEmitterPart | kBoardPart});
  const MapSubject subject{measured, strip, key, {}, 1.0, "", ""};
  EdgeProfile profile{.step_mm = 1e3 * (line.to - line.from).norm() / cells, .visibility = {}};
  for (std::size_t cell = 0; cell < measured.element_count(); ++cell) {
    const Estimate visible = figure_in(subject, MapFigure::key_visibility, cell);
    if (std::isfinite(visible.value())) profile.visibility.push_back(visible);
  }
  return profile;
}

ShadowEdge read_edge(const Scene& scene, const Key& key, const EdgeLine& line, const Effort& effort) {
  const EdgeProfile whole = read_profile(scene, key, line, kCells, effort);
  ShadowEdge edge{line.name, edge_width_mm(whole), passes_mm(whole, kFullShadow), whole.length_mm(),
                  line.stopped_by};
  if (edge.umbra_mm) edge.umbra_mm = *edge.umbra_mm + 0.5 * whole.step_mm;  // readings are cells' middles
  EdgeProfile fine = whole;
  double start_mm = 0.0;
  while (edge.width_mm && edge.width_mm->value() < kFewestCellsOfAnEdge * fine.step_mm &&
         fine.step_mm > kFinestStep_mm) {
    const double middle_mm = start_mm + passes_mm(fine, 0.5)->value() + 0.5 * fine.step_mm;
    const double reach_mm = std::max(1.5 * edge.width_mm->value(), 3.0 * fine.step_mm);
    start_mm = std::max(middle_mm - reach_mm, 0.0);
    fine = read_profile(scene, key, part_of(line, start_mm, std::min(middle_mm + reach_mm, edge.line_mm)),
                        kCells, effort);
    const auto width = edge_width_mm(fine);
    if (!width) break;
    edge.width_mm = width;
  }
  return edge;
}

std::vector<EdgeLine> shadow_lines(const Description& description, const Scene& scene, const Key& key) {
  std::vector<EdgeLine> lines;
  if (!description.table.used) return lines;
  const Direction away = -toward_window(scene, key.emitter);
  for (const auto& [name, corners] : corners_of_things(scene)) {
    const Point foot = far_foot(corners, away);
    const double way_m = way_to_the_edge_m(description.table, foot, away);
    if (!std::isfinite(way_m) || way_m <= 0.0) continue;
    EdgeLine line = line_over_the_table(scene, name, foot, away, way_m);
    if ((line.to - line.from).norm() > kShortestLine_m) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace fillside
