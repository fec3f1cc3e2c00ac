#include "libsim/geometry/seen_sphere.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {

SeenSphere::SeenSphere(const Sphere& sphere, const Point& seen_from)
    : sphere_(sphere), seen_from_(seen_from) {
  constexpr double kOffTheSkin = 1.0 + 1e-6;
  const Eigen::Vector3d way = sphere.centre - seen_from;
  distance_m_ = way.norm();
  if (distance_m_ <= kOffTheSkin * sphere.radius_m) return;
  to_centre_ = way / distance_m_;
  const double sine = sphere.radius_m / distance_m_, sine2 = sine * sine;
  one_minus_cosine_ = sine2 / (1.0 + std::sqrt(1.0 - sine2));
}

SeenSphere::Seen SeenSphere::draw(double u, double v) const {
  // A uniform disc, raised so that equal areas of it are equal parts of 1 - cosine.
  const PointInDisc disc = draw_disc(u, v);
  const double down = one_minus_cosine_ * std::min(1.0, disc.x * disc.x + disc.y * disc.y);
  const double squeeze = std::sqrt(one_minus_cosine_ * (2.0 - down));
  const Frame frame = frame_around(to_centre_);
  const Direction direction = frame.to_world({squeeze * disc.x, squeeze * disc.y, 1.0 - down});
  // The half chord by the sine, which is exact for narrow cones.
  const double sine2 = down * (2.0 - down), r = sphere_.radius_m;
  const double half_chord = std::sqrt(std::max(0.0, r * r - distance_m_ * distance_m_ * sine2));
  const Point point = seen_from_ + (distance_m_ * (1.0 - down) - half_chord) * direction;
  return {point, density_per_sr(point)};
}

}  // namespace fillside
