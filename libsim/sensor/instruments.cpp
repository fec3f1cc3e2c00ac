#include "libsim/sensor/instruments.h"

#include <algorithm>
#include <cmath>

#include "libsim/scene/placing.h"
#include "libsim/sensor/dials.h"
#include "libsim/sensor/sensor_format.h"

namespace fillside {
namespace {

struct Facing {
  const std::string& word;
  std::optional<Clock> clock;
  double elevation = 0.0;
};

Direction direction_of(const Facing& facing, const Direction& to_key, const Direction& to_camera) {
  if (facing.word == "down") return {0, 0, -1};
  if (facing.word == "camera") return to_camera;
  if (facing.word == "window") return to_key;
  if (facing.word == "away") return -to_key;
  if (facing.word == "clock" && facing.clock)
    return std::cos(facing.elevation) * to_clock(*facing.clock) +
           std::sin(facing.elevation) * Direction::UnitZ();
  return {0, 0, 1};
}

Meter meter_facing(std::string_view name, const Point& position, const Direction& faces) {
  return {std::string(name), {position, faces, FlatReceptor{}}, false};
}

}  // namespace

Direction toward_window(const Scene& scene, std::size_t emitter) {
  if (emitter >= scene.emitters().size()) return to_clock(Clock{9.0});
  const Emitter& key = scene.emitters()[emitter];
  // The dish is the origin.
  Direction outward = std::holds_alternative<Opening>(key.kind) ? Direction(-rectangle_of(key).normal())
                                                                : Direction(rectangle_of(key).centre);
  outward.z() = 0.0;
  return outward.norm() > 1e-6 ? Direction(outward.normalized()) : to_clock(Clock{9.0});
}

std::optional<Bounds> subject_bounds(const Scene& scene) {
  std::optional<Bounds> bounds;
  for (const Surface& surface : scene.surfaces()) {
    if (!scene.objects()[surface.object].subject) continue;
    if (!bounds) bounds.emplace();
    for (const Point& corner : surface.mesh.corners) bounds->include(corner);
  }
  return bounds;
}

namespace {
double subject_top_m(const Scene& scene) {
  const auto bounds = subject_bounds(scene);
  return bounds ? bounds->high.z() : 0.0;
}
}  // namespace

Point dish_place(const Scene& scene) { return dish_place(subject_top_m(scene)); }

std::vector<Meter> default_meters(const Description& description, const Scene& scene,
                                  const Direction& to_key) {
  const Point place = dish_place(scene);
  const Direction to_camera = toward_camera(description.camera);
  return {meter_facing(kDishUp, place, Direction::UnitZ()),
          meter_facing(kDishWindow, place, to_key),
          meter_facing(kDishAway, place, -to_key),
          meter_facing(kDishCamera, place, to_camera),
          {std::string(kDishDome), {place, to_camera, DomedReceptor{}}, false}};
}

std::vector<Meter> own_meters(const Description& description, const Scene& scene, const Direction& to_key) {
  std::vector<Meter> meters;
  for (const MeterSection& m : description.meters) {
    const Point place = place_spot(m.spot, dish_place(scene));
    Meter meter = meter_facing(
        m.name, place,
        direction_of({m.faces, m.faces_clock, m.elevation.si}, to_key, toward_camera(description.camera)));
    if (m.kind == "dome") meter.receiver.kind = DomedReceptor{};
    meter.subject_there = m.subject ? *m.subject == "there" : !is_at_the_dish(m.spot);
    meters.push_back(std::move(meter));
  }
  return meters;
}

std::vector<Patch> subject_patches(const Description& description, const Scene& scene,
                                   const Direction& to_key, const std::vector<std::string>* only) {
  std::vector<Patch> patches;
  const auto add = [&](std::string_view name, const Direction& faces) {
    if (only && std::ranges::find(*only, name) == only->end()) return;
    if (Patch patch(std::string(name), scene, faces); !patch.empty()) patches.push_back(std::move(patch));
  };
  add(kPatchLit, to_key);
  add(kPatchShadow, -to_key);
  add(kPatchTop, Direction::UnitZ());
  add(kPatchCamera, to_clock(description.camera.clock));
  return patches;
}

std::optional<MapPlane> map_plane(const Description& d, const std::string& name, const Direction& to_key,
                                  int cells_across) {
  MapPlane plane{.name = "map " + name, .rectangle = {}};
  if (name == "table") {
    plane.rectangle = {
        {d.table.x.si, d.table.y.si, 0.0}, {0.5 * d.table.width.si, 0, 0}, {0, 0.5 * d.table.depth.si, 0}};
  } else {
    const auto own = std::ranges::find(d.planes, name, &PlaneSection::name);
    if (own == d.planes.end()) return std::nullopt;
    const Direction faces = direction_of({own->faces, own->faces_clock}, to_key, to_clock(d.camera.clock));
    plane.rectangle =
        rectangle_facing(place_spot(own->spot, Point::Zero()), faces, own->width.si, own->height.si);
  }
  plane.columns = cells_across;
  plane.rows = std::max(1, static_cast<int>(std::lround(cells_across * plane.rectangle.half_v.norm() /
                                                        plane.rectangle.half_u.norm())));
  return plane;
}

namespace {

/// The box around everything of that name.
std::optional<Bounds> bounds_of(const Scene& scene, const std::string& name) {
  std::optional<Bounds> bounds;
  for (const Surface& surface : scene.surfaces()) {
    if (scene.objects()[surface.object].name != name) continue;
    if (!bounds) bounds.emplace();
    for (const Point& corner : surface.mesh.corners) bounds->include(corner);
  }
  return bounds;
}

/// Where the camera's focus lies on a thing: on its skin, where the way to its middle meets it; on its middle
/// when something stands before it.
Length distance_to_thing(const Scene& scene, const Camera& camera, const Bounds& bounds,
                         const std::string& name) {
  Point at = 0.5 * (bounds.low + bounds.high);
  const Ray way{camera.lens, (at - camera.lens).normalized()};
  if (const auto hit = scene.caster().first_hit(way, kAllOpaque);
      hit && scene.objects()[scene.surfaces()[hit->surface].object].name == name)
    at = hit->position;
  return metres((at - camera.lens).dot(camera.forward));
}

Length focus_of(const CameraSection& c, const Scene& scene, const Camera& camera) {
  constexpr double kLeastOverFocalLength = 1.001;  // nearer, nothing is sharp anywhere
  Length focus = c.focus.value_or(c.distance);
  if (const auto bounds = bounds_of(scene, c.focus_on))
    focus = distance_to_thing(scene, camera, *bounds, c.focus_on);
  return std::max(focus, kLeastOverFocalLength * c.focal_length);
}

}  // namespace

Camera camera_of(const Description& description, const Scene& scene) {
  const CameraSection& c = description.camera;
  const SensorFormat& sensor = sensor_format(c.sensor);
  const Point at = camera_looks_at(c, subject_top_m(scene));
  const double elevation = elevation_of(c);
  const Direction upward = std::cos(elevation) * Direction::UnitZ() - std::sin(elevation) * to_clock(c.clock);
  Camera camera;
  look(camera, at + c.distance.si * toward_camera(c), at, upward);
  const double wide_mm = c.portrait ? sensor.short_mm : sensor.long_mm,
               high_mm = c.portrait ? sensor.long_mm : sensor.short_mm;
  camera.sensor_width = millimetres(wide_mm);
  camera.sensor_height = millimetres(high_mm);
  camera.focal_length = c.focal_length;
  camera.aperture = true_aperture(c.aperture);
  camera.pinhole = c.pinhole;
  camera.focus = focus_of(c, scene, camera);
  const double longer = std::max(wide_mm, high_mm);
  camera.columns = std::max(1, static_cast<int>(std::lround(c.pixels * wide_mm / longer)));
  camera.rows = std::max(1, static_cast<int>(std::lround(c.pixels * high_mm / longer)));
  return camera;
}

}  // namespace fillside
