#include "libsim/sensor/seen_things.h"

#include <map>

#include "libsim/sensor/frame_grid.h"

namespace fillside {
namespace {

constexpr int kLongSide = 360;

}  // namespace

std::vector<ThingInView> seen_things(const Scene& scene, const Camera& camera) {
  const FrameGrid grid(camera, kLongSide);
  std::map<std::uint16_t, ThingInView> seen;
  for (int row = 0; row < grid.rows(); ++row)
    for (int column = 0; column < grid.columns(); ++column) {
      const auto hit = scene.caster().first_hit(grid.ray(column, row), kEverything);
      if (!hit) continue;
      const std::uint16_t object = scene.surfaces()[hit->surface].object;
      ThingInView& thing = seen[object];
      thing.object = object;
      thing.share_of_frame += 1.0 / (grid.columns() * grid.rows());
      thing.to_left |= column == 0;
      thing.to_right |= column == grid.columns() - 1;
      thing.to_top |= row == 0;
      thing.to_bottom |= row == grid.rows() - 1;
    }
  std::vector<ThingInView> things;
  for (const auto& [object, thing] : seen) things.push_back(thing);
  return things;
}

}  // namespace fillside
