#include "libsim/scene/print.h"

#include <cassert>

#include "libsim/base/cases.h"

namespace fillside {

Rgb Print::reflectance_at(const SurfacePlace& place) const {
  return std::visit(Cases{[&](const LaidFlat& flat) {
                            const Eigen::Vector3d from_corner = place.position - flat.corner;
                            return pattern->at(from_corner.dot(flat.right_per_m),
                                               from_corner.dot(flat.up_per_m));
                          },
                          [&](const LaidByCorners& bent) {
                            assert(place.triangle < bent.places.size());
                            const PicturePlaces& at = bent.places[place.triangle];
                            const double first = 1.0 - place.along_second - place.along_third;
                            const Eigen::Vector2d uv =
                                first * at[0] + place.along_second * at[1] + place.along_third * at[2];
                            return pattern->at(uv.x(), uv.y());
                          }},
                    laid);
}

Print laid_flat(std::shared_ptr<const Pattern> pattern, const Rectangle& on, double width_m) {
  const double height_m = width_m * pattern->height() / pattern->width();
  const LaidFlat flat{on.at(-1.0, -1.0), on.half_u.normalized() / width_m, on.half_v.normalized() / height_m};
  return {std::move(pattern), flat};
}

}  // namespace fillside
