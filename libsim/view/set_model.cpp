#include "libsim/view/set_model.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/fewer_triangles.h"

namespace fillside {
namespace {

bool is_shown(ObjectKind kind) { return kind != ObjectKind::room && kind != ObjectKind::window; }

bool may_be_coarser(ObjectKind kind) { return kind == ObjectKind::food || kind == ObjectKind::prop; }

ModelThing thing_of(const Scene& scene, const Surface& surface) {
  const Object& object = scene.objects()[surface.object];
  const Rgb colour = albedo(surface.material, Direction::UnitZ());
  const bool see_through = lets_light_through(surface.material);
  return {object.name, object.kind, colour.max(0.0).min(1.0), see_through, surface.mesh};
}

std::array<Point, 4> frame_of(const Camera& camera) {
  const auto [width, height] = camera.frame_size();
  const Point middle = camera.lens + camera.focus.si * camera.forward;
  const Eigen::Vector3d right = 0.5 * width.si * camera.right, up = 0.5 * height.si * camera.up;
  return {middle - right - up, middle + right - up, middle + right + up, middle - right + up};
}

/// The room's box; without a room there is no limit.
Bounds room_of(const Scene& scene) {
  Bounds bounds;
  for (const Surface& surface : scene.surfaces())
    if (scene.objects()[surface.object].kind == ObjectKind::room)
      for (const Point& corner : surface.mesh.corners) bounds.include(corner);
  return bounds;
}

Point within(const Point& eye, const Bounds& room) {
  constexpr double kFromWall_m = 0.15;
  if ((room.low.array() > room.high.array()).any()) return eye;
  const Point low = room.low.array() + kFromWall_m, high = room.high.array() - kFromWall_m;
  return eye.cwiseMax(low).cwiseMin(high);
}

}  // namespace

SetModel model_of(const Scene& scene, const Camera& camera, std::size_t most_triangles) {
  SetModel model{{}, {}, camera.lens, frame_of(camera)};
  std::size_t all = 0;
  for (const Surface& surface : scene.surfaces())
    if (is_shown(scene.objects()[surface.object].kind)) {
      model.things.push_back(thing_of(scene, surface));
      if (may_be_coarser(model.things.back().kind)) all += surface.mesh.triangles.size();
    }
  const double kept =
      std::min(1.0, static_cast<double>(most_triangles) / static_cast<double>(std::max<std::size_t>(all, 1)));
  for (ModelThing& thing : model.things)
    if (may_be_coarser(thing.kind))
      thing.mesh = with_fewer_triangles(
          thing.mesh,
          static_cast<std::size_t>(std::ceil(kept * static_cast<double>(thing.mesh.triangles.size()))));
  for (const Emitter& emitter : scene.emitters())
    if (std::holds_alternative<Opening>(emitter.kind))
      model.windows.push_back({emitter.name, rectangle_of(emitter)});
  return model;
}

Camera camera_on_the_set(const Scene& scene, const Camera& camera, const Direction& to_window, int columns,
                         int rows) {
  Camera view = camera;
  view.pinhole = true;
  view.sensor_width = millimetres(36);
  view.sensor_height = (static_cast<double>(rows) / columns) * view.sensor_width;
  view.focal_length = millimetres(28);
  view.columns = columns, view.rows = rows;
  const Direction beside = (-0.28 * to_window - 1.0 * Direction::UnitY()).normalized();
  const Point eye = within(1.95 * beside + 1.25 * Direction::UnitZ(), room_of(scene));
  look(view, eye, 0.15 * to_window + 0.2 * Direction::UnitZ(), Direction::UnitZ());
  return view;
}

}  // namespace fillside
