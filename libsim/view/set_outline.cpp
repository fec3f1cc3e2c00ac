#include "libsim/view/set_outline.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/convex_hull.h"
#include "libsim/scene/placing.h"

namespace fillside {
namespace {

using Path = FlatPath;

std::array<double, 2> from_above(const Point& point) { return {100.0 * point.x(), 100.0 * point.y()}; }

Path footprint_of(const Scene& scene, std::size_t object) {
  Path points;
  for (const Surface& surface : scene.surfaces())
    if (surface.object == object)
      for (const Point& corner : surface.mesh.corners) points.push_back(from_above(corner));
  return convex_hull(std::move(points));
}

Path window_line(const Rectangle& opening) {
  return {from_above(opening.at(-1, 0)), from_above(opening.at(1, 0))};
}

}  // namespace

std::vector<MapOutline> outlines_from_above(const Description& description, const Scene& scene) {
  using Kind = MapOutline::Kind;
  std::vector<MapOutline> outlines;
  for (const Emitter& emitter : scene.emitters())
    if (std::holds_alternative<Opening>(emitter.kind))
      outlines.push_back({emitter.name, window_line(rectangle_of(emitter)), false, Kind::window});
  for (std::size_t object = 0; object < scene.objects().size(); ++object) {
    const auto& [name, kind, subject] = scene.objects()[object];
    if (kind == ObjectKind::food) outlines.push_back({name, footprint_of(scene, object), true, Kind::dish});
    if (kind == ObjectKind::prop) outlines.push_back({name, footprint_of(scene, object), true, Kind::prop});
    if (kind == ObjectKind::lamp) outlines.push_back({name, footprint_of(scene, object), true, Kind::prop});
    if (kind == ObjectKind::board) outlines.push_back({name, footprint_of(scene, object), true, Kind::board});
    if (kind == ObjectKind::diffuser)
      outlines.push_back({name, footprint_of(scene, object), true, Kind::diffuser});
  }
  const Direction to_camera = to_clock(description.camera.clock);
  outlines.push_back(
      {"camera", {from_above(description.camera.distance.si * to_camera)}, false, Kind::camera});
  return outlines;
}

}  // namespace fillside
