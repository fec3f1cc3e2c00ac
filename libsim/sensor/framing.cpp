#include "libsim/sensor/framing.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace fillside {
namespace {

bool is_in_frame(const std::optional<std::array<double, 2>>& place) {
  return place && std::abs((*place)[0]) <= 0.5 && std::abs((*place)[1]) <= 0.5;
}

/// Every corner of every surface of an object: finer than a box, and what the picture shows.
InFrame how_much(const Camera& camera, const std::vector<const Surface*>& surfaces) {
  std::size_t inside = 0, all = 0;
  for (const Surface* surface : surfaces)
    for (const Point& corner : surface->mesh.corners) {
      ++all;
      inside += is_in_frame(place_in_frame(camera, corner));
    }
  return inside == all ? InFrame::whole : (inside == 0 ? InFrame::outside : InFrame::cut);
}

bool is_thing(ObjectKind kind) {
  return kind == ObjectKind::food || kind == ObjectKind::prop || kind == ObjectKind::board ||
         kind == ObjectKind::diffuser || kind == ObjectKind::lamp;
}

}  // namespace

std::optional<std::array<double, 2>> place_in_frame(const Camera& camera, const Point& point) {
  const Eigen::Vector3d from_lens = point - camera.lens;
  const double ahead_m = from_lens.dot(camera.forward);
  if (ahead_m <= 0.0) return std::nullopt;
  const auto [width, height] = camera.frame_size();
  const double scale = camera.focus.si / ahead_m;
  return std::array{scale * from_lens.dot(camera.right) / width.si,
                    scale * from_lens.dot(camera.up) / height.si};
}

std::vector<FramedThing> framed_things(const Scene& scene, const Camera& camera) {
  std::map<std::size_t, std::vector<const Surface*>> by_object;
  for (const Surface& surface : scene.surfaces()) by_object[surface.object].push_back(&surface);
  std::vector<FramedThing> things;
  for (const auto& [object, surfaces] : by_object)
    if (is_thing(scene.objects()[object].kind))
      things.push_back(
          {scene.objects()[object].name, scene.objects()[object].kind, how_much(camera, surfaces)});
  return things;
}

std::vector<std::size_t> cells_in_frame(const Camera& camera, const MapPlane& plane) {
  std::vector<std::size_t> cells;
  for (std::size_t cell = 0; cell < plane.element_count(); ++cell)
    if (is_in_frame(place_in_frame(camera, plane.middle_of(cell)))) cells.push_back(cell);
  return cells;
}

Length distance_for_width(const Camera& camera, Length wanted) {
  return (1.0 + wanted / camera.sensor_width) * camera.focal_length;
}

Length distance_for_field(const Camera& camera, Length width, Length height) {
  return std::max(distance_for_width(camera, width),
                  (1.0 + height / camera.sensor_height) * camera.focal_length);
}

Tilt tilt_of(const Camera& camera) {
  const double cosine = std::clamp(-camera.forward.z(), -1.0, 1.0), off = std::acos(cosine);
  Tilt tilt{radians(off), std::nullopt};
  // Along the axis the table is met at s / (1 -+ (v / s) tan off) at half a frame height v below and above.
  const double slope = 0.5 * camera.frame_size()[1].si / camera.focus.si * std::tan(off);
  if (cosine > 1e-9 && slope < 1.0) tilt.near_to_far = (1.0 + slope) / (1.0 - slope);
  return tilt;
}

}  // namespace fillside
