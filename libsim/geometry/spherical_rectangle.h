// A rectangle as seen from a point: drawing points on it uniformly by solid angle, which stays bounded
// however near the point is. Urena, Fajardo, King, "An Area-Preserving Parametrization for Spherical
// Rectangles", Computer Graphics Forum 32(4), 2013, section 3 and the pseudo-code of its appendix. Very small
// rectangles are drawn by area instead: there the solid angle is a small difference of large angles; and
// distant ones, because it is cheaper and hardly less even.
#pragma once

#include "libsim/geometry/rectangle.h"

namespace fillside {

class SphericalRectangle {
 public:
  /// The rectangle's front seen from a point; with `both_sides` its back too.
  SphericalRectangle(const Rectangle& rectangle, const Point& seen_from, bool both_sides = false);

  /// False when the point lies in its plane or behind it.
  bool visible() const { return visible_; }

  struct Seen {
    Point point;            ///< on the rectangle
    double density_per_sr;  ///< of its direction, at the point it is seen from
  };
  Seen draw(double u, double v) const;
  /// Density with which draw gives the direction to a point of the rectangle.
  double density_per_sr(const Point& point) const;
  /// Of a small or distant rectangle by its centre's distance, to a few per cent.
  double solid_angle_sr() const { return solid_angle_sr_; }

 private:
  void draw_by_area(double area_m2, double distance2);
  double area_density_per_sr(const Point& point) const;

  Rectangle rectangle_;
  Point seen_from_;
  Eigen::Vector3d x_axis_, y_axis_, z_axis_;
  double x0_ = 0, x1_ = 0, y0_ = 0, y1_ = 0, z0_ = 0, b0_ = 0, b1_ = 0, k_ = 0;
  double solid_angle_sr_ = 0;
  bool visible_ = false, by_area_ = false;
};

}  // namespace fillside
