// The front of a disc as seen from a point. From afar points are drawn evenly over its area; from near the
// square around it is drawn by solid angle, which stays bounded, and what misses the disc counts as dark.
#pragma once

#include <optional>

#include "libsim/geometry/round_shapes.h"
#include "libsim/geometry/spherical_rectangle.h"

namespace fillside {

class SeenDisc {
 public:
  SeenDisc(const Disc& disc, const Point& seen_from);

  /// False from its plane and from behind.
  bool visible() const { return height_m_ > 0.0; }

  /// A point of the disc or, from near, of the square around it; and the density of its direction.
  SphericalRectangle::Seen draw(double u, double v) const;
  double density_per_sr(const Point& point) const;

 private:
  Disc disc_;
  Point seen_from_;
  double height_m_ = 0.0;  ///< over its plane
  std::optional<SphericalRectangle> near_;
};

}  // namespace fillside
