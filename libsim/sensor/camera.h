// A camera: pinhole or thin lens before a flat sensor. The film receives radiance; vignetting of real lenses
// is left out, so that an evenly lit card reads evenly.
#pragma once

#include <array>
#include <string>

#include "libsim/base/quantity.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/base/space.h"

namespace fillside {

struct Camera {
  std::string name = "camera";
  Point lens = {0, -1, 0.5};
  Direction forward = {0, 1, 0}, right = {1, 0, 0}, up = {0, 0, 1};
  Length sensor_width = millimetres(36), sensor_height = millimetres(24);
  Length focal_length = millimetres(100);
  FNumber aperture = f_number(5.6);
  bool pinhole = false;
  Length focus = metres(1.0);  ///< from the lens to the plane that is sharp
  int columns = 720, rows = 480;

  std::size_t element_count() const {
    return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
  }

  /// Width and height of what is in frame on the focused plane: sensor x (focus - f) / f, the thin lens
  /// equation.
  std::array<Length, 2> frame_size() const;

  /// A ray through a point drawn in a pixel (row 0 on top) and one drawn on the lens.
  Ray draw(std::size_t element, const Numbers4& u) const;
};

/// Points the camera: `from` looks at `at`, the picture's top as near to `upward` as that allows.
void look(Camera& camera, const Point& from, const Point& at, const Direction& upward);

}  // namespace fillside
