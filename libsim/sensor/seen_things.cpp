#include "libsim/sensor/seen_things.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace fillside {
namespace {

constexpr int kLongSide = 360;

/// Through the middle of the lens and a place of the frame: right and up of its middle, in widths and
/// heights.
Ray ray_to(const Camera& camera, double right, double up) {
  const auto [width, height] = camera.frame_size();
  const Eigen::Vector3d goal =
      camera.focus.si * camera.forward + right * width.si * camera.right + up * height.si * camera.up;
  return {camera.lens, goal.normalized(), std::numeric_limits<double>::infinity()};
}

}  // namespace

std::vector<ThingInView> seen_things(const Scene& scene, const Camera& camera) {
  const double long_side = std::max(camera.sensor_width, camera.sensor_height).si;
  const int columns = static_cast<int>(std::lround(kLongSide * camera.sensor_width.si / long_side)),
            rows = static_cast<int>(std::lround(kLongSide * camera.sensor_height.si / long_side));
  std::map<std::uint16_t, ThingInView> seen;
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const Ray ray = ray_to(camera, (column + 0.5) / columns - 0.5, 0.5 - (row + 0.5) / rows);
      const auto hit = scene.caster().first_hit(ray, kEverything);
      if (!hit) continue;
      const std::uint16_t object = scene.surfaces()[hit->surface].object;
      ThingInView& thing = seen[object];
      thing.object = object;
      thing.share_of_frame += 1.0 / (columns * rows);
      thing.to_left |= column == 0;
      thing.to_right |= column == columns - 1;
      thing.to_top |= row == 0;
      thing.to_bottom |= row == rows - 1;
    }
  std::vector<ThingInView> things;
  for (const auto& [object, thing] : seen) things.push_back(thing);
  return things;
}

}  // namespace fillside
