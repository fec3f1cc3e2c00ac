// Small sets with known answers, and meters to read them. World axes of these sets: x right, y into the room,
// z up; the window lies in y = 0 and faces +y.
#pragma once

#include <array>
#include <string>
#include <utility>
#include <vector>

#include "libsim/geometry/panels.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/measure.h"

namespace fillside::tests {

inline const Direction kUp{0, 0, 1}, kDown{0, 0, -1}, kLeft{-1, 0, 0}, kRight{1, 0, 0};
inline const Direction kToWindow{0, -1, 0}, kAway{0, 1, 0};

/// The rectangle between two opposite corners whose sides run along the axes, its front toward `faces` (an
/// axis).
inline Rectangle sheet(const Point& low, const Point& high, const Direction& faces) {
  const Eigen::Vector3d half = 0.5 * (high - low);
  int flat = 0;
  faces.cwiseAbs().maxCoeff(&flat);
  Eigen::Vector3d u = Eigen::Vector3d::Zero(), v = u;
  u[(flat + 1) % 3] = half[(flat + 1) % 3];
  v[(flat + 2) % 3] = half[(flat + 2) % 3];
  if (u.cross(v).dot(faces) < 0.0) u = -u;
  return {0.5 * (low + high), u, v};
}

/// A rectangle in the window wall y = 0.
inline Rectangle in_window_wall(double left, double right, double bottom, double top) {
  return sheet({left, 0, bottom}, {right, 0, top}, kAway);
}

/// 1.2 m x 1.2 m, its sill flush with the table.
inline Rectangle window_on_the_table() { return in_window_wall(-0.6, 0.6, 0.0, 1.2); }

/// A bare hole with the outside in it: takes light in, gives none back.
inline void add_window(SceneParts& parts, const Rectangle& rectangle, std::string name = "window") {
  Opening opening;
  opening.rectangle = rectangle;
  parts.add_emitter(std::move(name), opening);
}

/// A rectangle that shines evenly from its front.
inline void add_lamp(SceneParts& parts, const Rectangle& rectangle, double radiance, double albedo = 0.0,
                     std::string name = "lamp") {
  parts.add_emitter(std::move(name), LightPanel{rectangle, grey(radiance), Matte{grey(albedo)}});
}

/// A sheet that receivers aim at (board, cloth, mirror, pane), and one that they find by chance.
inline void add_board(SceneParts& parts, const Rectangle& rectangle, const Material& material,
                      std::string name = "card") {
  parts.add_target_sheet(rectangle, material, parts.add_object(std::move(name), ObjectKind::board), true);
}
inline void add_wall(SceneParts& parts, const Mesh& mesh, const Material& material,
                     std::string name = "wall") {
  parts.add_surface(mesh, material, parts.add_object(std::move(name), ObjectKind::room));
}

/// Black surroundings, an even outside of 1000 cd/m2 and one bare window.
inline SceneParts black_room(const Rectangle& window, double outside_luminance = 1000.0) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(outside_luminance));
  add_window(parts, window);
  return parts;
}

/// The six faces of a box from the origin, seen from inside: floor, ceiling, y = 0, y = far, x = 0, x = far.
inline std::array<Rectangle, 6> inner_faces(const Point& far) {
  const auto [x, y, z] = std::array{far.x(), far.y(), far.z()};
  return {sheet({0, 0, 0}, {x, y, 0}, kUp),    sheet({0, 0, z}, {x, y, z}, kDown),
          sheet({0, 0, 0}, {x, 0, z}, kAway),  sheet({0, y, 0}, {x, y, z}, kToWindow),
          sheet({0, 0, 0}, {0, y, z}, kRight), sheet({x, 0, 0}, {x, y, z}, kLeft)};
}

/// The same as one mesh, with holes where openings or panels lie in a face and look the same way.
inline Mesh box_around(const Point& far, const std::vector<Rectangle>& flush) {
  Mesh box;
  for (const Rectangle& face : inner_faces(far)) {
    std::vector<Rectangle> holes;
    for (const Rectangle& each : flush)
      if (std::abs((each.centre - face.centre).dot(face.normal())) < 1e-9 &&
          face.normal().dot(each.normal()) > 0.5)
        holes.push_back(each);
    append(box, wall_with_holes(face, holes));
  }
  return box;
}

inline Meter flat_meter(const Point& at, const Direction& faces, std::string name = "flat") {
  return {std::move(name), {at, faces, FlatReceptor{}}, true};
}
inline Meter dome_meter(const Point& at, const Direction& faces, std::string name = "dome") {
  return {std::move(name), {at, faces, DomedReceptor{}}, true};
}

/// One cell over a whole rectangle: the mean illuminance on its front.
inline MapPlane mean_over(const Rectangle& rectangle, std::string name = "mean") {
  return {std::move(name), rectangle, 1, 1, true};
}

inline constexpr Budget kFew{.samples = 256}, kSome{.samples = 1024}, kMany{.samples = 4096};

/// Everything that arrives.
inline Estimate read(const Scene& scene, const Sensor& sensor, const Budget& budget = kSome) {
  return measure(scene, sensor, budget).total();
}

/// What one object turned last, from all sources; "straight" names the light that nothing turned.
inline Estimate via(const Measurement& measurement, const std::string& name) {
  return measurement.sum(0,
                         [&](std::size_t, std::size_t v) { return measurement.names().via_name(v) == name; });
}
inline Estimate read_via(const Scene& scene, const Sensor& sensor, const std::string& name,
                         const Budget& budget = kSome) {
  return via(measure(scene, sensor, budget), name);
}

}  // namespace fillside::tests
