#include "libsim/sensor/frame_grid.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fillside {
namespace {

int share_of(Length side, const Camera& camera, int along_long_side) {
  const Length longer = std::max(camera.sensor_width, camera.sensor_height);
  return std::max(1, static_cast<int>(std::lround(along_long_side * (side / longer))));
}

}  // namespace

FrameGrid::FrameGrid(const Camera& camera, int along_long_side)
    : camera_(camera),
      columns_(share_of(camera.sensor_width, camera, along_long_side)),
      rows_(share_of(camera.sensor_height, camera, along_long_side)) {}

Ray FrameGrid::ray(int column, int row) const {
  const auto [width, height] = camera_.frame_size();
  const double right = (column + 0.5) / columns_ - 0.5, up = 0.5 - (row + 0.5) / rows_;
  const Eigen::Vector3d goal =
      camera_.focus.si * camera_.forward + right * width.si * camera_.right + up * height.si * camera_.up;
  return {camera_.lens, goal.normalized(), std::numeric_limits<double>::infinity()};
}

}  // namespace fillside
