#include "libsim/what_if/checked_set.h"

#include <cmath>

namespace fillside {

Rectangle level_rectangle(const Point& low, const Point& high, const Direction& faces) {
  const Eigen::Vector3d half = 0.5 * (high - low);
  int flat = 0;
  faces.cwiseAbs().maxCoeff(&flat);
  Eigen::Vector3d u = Eigen::Vector3d::Zero(), v = u;
  u[(flat + 1) % 3] = half[(flat + 1) % 3];
  v[(flat + 2) % 3] = half[(flat + 2) % 3];
  if (u.cross(v).dot(faces) < 0.0) u = -u;
  return {0.5 * (low + high), u, v};
}

Rectangle window_at_the_table() { return level_rectangle({-0.6, 0, 0}, {0.6, 0, 1.2}, kFaceAway); }

SceneParts set_with_opening(const Outside& outside, const Rectangle& rectangle) {
  SceneParts parts;
  parts.outside = outside;
  Opening opening;
  opening.rectangle = rectangle;
  opening.glass = {.index = 1.52, .absorption = 0.0, .panes = 0};
  parts.add_emitter("window", opening);
  return parts;
}

void add_checked_board(SceneParts& parts, const Rectangle& rectangle, const Material& material) {
  parts.add_target_sheet(rectangle, material, parts.add_object("card", ObjectKind::board), true);
}

void add_checked_wall(SceneParts& parts, const Mesh& mesh, const Material& material) {
  parts.add_surface(mesh, material, parts.add_object("wall", ObjectKind::room));
}

void add_checked_panel(SceneParts& parts, const Rectangle& rectangle, double luminance, double albedo) {
  parts.add_emitter("panel", LightPanel{rectangle, grey(luminance), Matte{grey(albedo)}});
}

std::array<Rectangle, 6> faces_within(const Point& far) {
  const double x = far.x(), y = far.y(), z = far.z();
  const Direction left{-1, 0, 0}, right{1, 0, 0};
  return {
      level_rectangle({0, 0, 0}, {x, y, 0}, kFaceUp),   level_rectangle({0, 0, z}, {x, y, z}, kFaceDown),
      level_rectangle({0, 0, 0}, {x, 0, z}, kFaceAway), level_rectangle({0, y, 0}, {x, y, z}, kFaceWindow),
      level_rectangle({0, 0, 0}, {0, y, z}, right),     level_rectangle({x, 0, 0}, {x, y, z}, left)};
}

Mesh walls_around(const Point& far, const Rectangle& hole) {
  Mesh box;
  for (const Rectangle& face : faces_within(far)) {
    const bool within = std::abs((hole.centre - face.centre).dot(face.normal())) < 1e-9 &&
                        face.normal().dot(hole.normal()) > 0.5;
    append(box, wall_with_holes(face, within ? std::vector{hole} : std::vector<Rectangle>{}));
  }
  return box;
}

Measurement measured(const Scene& scene, const Sensor& sensor, std::uint32_t samples,
                     const LightCheckEffort& effort) {
  return measure(scene, sensor, {.samples = samples, .seed = effort.seed, .threads = effort.threads});
}

Estimate straight_of(const Measurement& measurement) {
  return measurement.sum(0, [](std::size_t, std::size_t via) { return via == 0; });
}

Estimate flat_reading(const Scene& scene, const Point& at, const Direction& faces, std::uint32_t samples,
                      const LightCheckEffort& effort) {
  return measured(scene, Meter{"meter", {at, faces, FlatReceptor{}}, true}, samples, effort).total();
}

Estimate turned_reading(const Scene& scene, const Point& at, const Direction& faces, std::uint32_t samples,
                        const LightCheckEffort& effort) {
  const auto measurement =
      measured(scene, Meter{"meter", {at, faces, FlatReceptor{}}, true}, samples, effort);
  return measurement.sum(0, [](std::size_t, std::size_t via) { return via != 0; });
}

}  // namespace fillside
