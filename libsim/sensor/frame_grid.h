// An even grid of rays over a camera's frame, through the middle of its lens.
#pragma once

#include "libsim/sensor/camera.h"

namespace fillside {

class FrameGrid {
 public:
  /// As many rays along the sensor's long side; the camera must outlive the grid.
  FrameGrid(const Camera& camera, int along_long_side);

  int columns() const { return columns_; }
  int rows() const { return rows_; }
  /// Column 0 is on the left, row 0 on top, as in a picture.
  Ray ray(int column, int row) const;

 private:
  const Camera& camera_;
  int columns_, rows_;
};

}  // namespace fillside
