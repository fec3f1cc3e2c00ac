#include "libsim/geometry/seen_disc.h"

#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {

SeenDisc::SeenDisc(const Disc& disc, const Point& seen_from) : disc_(disc), seen_from_(seen_from) {
  constexpr double kInPlane_m = 2e-6, kFarInRadii = 4.0;  // as in spherical_rectangle.cpp
  const Eigen::Vector3d from_centre = seen_from - disc.centre;
  const double height_m = from_centre.dot(disc.normal);
  if (height_m <= kInPlane_m) return;
  if (from_centre.norm() < kFarInRadii * disc.radius_m) {
    near_.emplace(square_around(disc), seen_from);
    if (!near_->visible()) return;
  }
  height_m_ = height_m;
}

SphericalRectangle::Seen SeenDisc::draw(double u, double v) const {
  if (near_) return near_->draw(u, v);
  const PointInDisc at = draw_disc(u, v);
  const Point point = disc_.centre + disc_.radius_m * frame_around(disc_.normal).to_world({at.x, at.y, 0.0});
  return {point, density_per_sr(point)};
}

double SeenDisc::density_per_sr(const Point& point) const {
  if (!visible()) return 0.0;
  if (near_) return near_->density_per_sr(point);
  const double distance2 = (point - seen_from_).squaredNorm();
  return distance2 * std::sqrt(distance2) / (disc_.area_m2() * height_m_);
}

}  // namespace fillside
