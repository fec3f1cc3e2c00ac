#include "libsim/what_if/remarks_on_picture.h"

#include <fmt/format.h>

#include <algorithm>

#include "libsim/sensor/framing.h"
#include "libsim/sensor/instruments.h"
#include "libsim/sensor/seen_things.h"
#include "libsim/what_if/named_section.h"

namespace fillside {
namespace {

/// Corners of a mesh, and places between them where its triangles are large, so that a sheet whose corners
/// are all outside the frame is still found in it.
std::vector<Point> places_of(const Mesh& mesh) {
  constexpr std::size_t kFine = 400;  // triangles
  constexpr int kSteps = 24;
  std::vector<Point> places = mesh.corners;
  if (mesh.triangles.size() > kFine) return places;
  for (const auto& triangle : mesh.triangles) {
    const Point a = mesh.corners[triangle[0]], b = mesh.corners[triangle[1]], c = mesh.corners[triangle[2]];
    for (int i = 0; i <= kSteps; ++i)
      for (int j = 0; i + j <= kSteps; ++j)
        places.push_back(a + (1.0 * i / kSteps) * (b - a) + (1.0 * j / kSteps) * (c - a));
  }
  return places;
}

bool any_in_frame(const Camera& camera, const std::vector<Point>& places, const Eigen::Vector3d& moved) {
  return std::ranges::any_of(places, [&](const Point& place) {
    const auto at = place_in_frame(camera, place + moved);
    return at && std::abs((*at)[0]) <= 0.5 && std::abs((*at)[1]) <= 0.5;
  });
}

bool may_be_seen(ObjectKind kind) {
  return kind != ObjectKind::board && kind != ObjectKind::diffuser && kind != ObjectKind::lamp;
}

bool is_backdrop(const Description& description, const ThingInView& seen, const std::string& name) {
  if (seen.to_left && seen.to_right) return true;
  return std::ranges::any_of(description.boards, [&](const BoardSection& board) {
    return board.name == name && !board.picture.file.empty();
  });
}

/// "at the right", "at the top": the edges of the frame that it comes in by.
std::string edges_text(const ThingInView& seen) {
  if (seen.to_left != seen.to_right) return seen.to_left ? " at the left" : " at the right";
  if (seen.to_top != seen.to_bottom) return seen.to_top ? " at the top" : " at the bottom";
  return "";
}

void remark_on_seen(const Description& description, const Scene& scene, const Camera& camera,
                    const ThingInView& seen, SetRemarks& remarks) {
  const Object& object = scene.objects()[seen.object];
  if (may_be_seen(object.kind) || is_backdrop(description, seen, object.name)) return;
  const auto way_m = way_out_of_frame_m(scene, seen.object, camera);
  say_of(description, object.name, {"distance", "x", "y", "clock"},
         fmt::format("it is in the picture{}, on {:.2g} % of it", edges_text(seen),
                     100.0 * std::max(seen.share_of_frame, 0.0001)),
         way_m ? fmt::format("move it {} farther from the dish, or frame tighter", length_text_up(*way_m))
               : std::string("turn it, take a smaller one, or frame tighter"),
         remarks.warnings);
}

void remark_on_food(const Description& description, const Scene& scene, const std::vector<ThingInView>& seen,
                    SetRemarks& remarks) {
  for (std::size_t i = 0; i < scene.objects().size(); ++i) {
    const Object& object = scene.objects()[i];
    if (object.kind != ObjectKind::food || !object.subject) continue;
    if (std::ranges::any_of(seen, [&](const ThingInView& thing) { return thing.object == i; })) continue;
    say_of(description, object.name, {"distance", "x", "y", "clock"}, "the camera does not see it",
           "turn the camera to it (look_x, look_y, look_z), or move away what stands before it",
           remarks.warnings);
  }
}

}  // namespace

std::optional<double> way_out_of_frame_m(const Scene& scene, std::uint16_t object, const Camera& camera) {
  constexpr double kMost_m = 3.0, kStep_m = 0.01;
  std::vector<Point> places;
  Point middle = Point::Zero();
  for (const Surface& surface : scene.surfaces())
    if (surface.object == object) {
      for (const Point& place : places_of(surface.mesh)) places.push_back(place);
      const Bounds bounds = bounds_of(surface.mesh);
      middle += 0.5 * (bounds.low + bounds.high);
    }
  const Direction outward = Direction(middle.x(), middle.y(), 0.0).normalized();
  for (double way_m = 0.0; way_m <= kMost_m; way_m += kStep_m)
    if (!any_in_frame(camera, places, way_m * outward)) return way_m;
  return std::nullopt;
}

void remark_on_picture(const Description& description, const Scene& scene, SetRemarks& remarks) {
  const Camera camera = camera_of(description, scene);
  const std::vector<ThingInView> seen = seen_things(scene, camera);
  for (const ThingInView& thing : seen) remark_on_seen(description, scene, camera, thing, remarks);
  remark_on_food(description, scene, seen, remarks);
}

}  // namespace fillside
