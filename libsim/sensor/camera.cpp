#include "libsim/sensor/camera.h"

#include "libsim/base/warp.h"

namespace fillside {

std::array<Length, 2> Camera::frame_size() const {
  const double per_sensor = (focus.si - focal_length.si) / focal_length.si;
  return {per_sensor * sensor_width, per_sensor * sensor_height};
}

Ray Camera::draw(std::size_t element, const Numbers4& u) const {
  const auto width = static_cast<std::size_t>(columns);
  const std::size_t row = element / width, column = element % width;
  const double across = (static_cast<double>(column) + u[0]) / columns - 0.5;
  const double down = (static_cast<double>(row) + u[1]) / rows - 0.5;
  const auto [frame_width, frame_height] = frame_size();
  const Point sharp =
      lens + focus.si * forward + across * frame_width.si * right - down * frame_height.si * up;
  Point origin = lens;
  if (!pinhole) {
    const double radius_m = 0.5 * focal_length.si / aperture.si;
    const auto [x, y] = draw_disc(u[2], u[3]);
    origin += radius_m * (x * right + y * up);
  }
  return {origin, (sharp - origin).normalized()};
}

void look(Camera& camera, const Point& from, const Point& at, const Direction& upward) {
  camera.lens = from;
  camera.forward = (at - from).normalized();
  camera.right = camera.forward.cross(upward).normalized();
  camera.up = camera.right.cross(camera.forward);
}

}  // namespace fillside
