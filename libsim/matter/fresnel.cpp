#include "libsim/matter/fresnel.h"

#include <algorithm>
#include <cmath>

namespace fillside {

Face face_between(double ratio, double cosine) {
  const double sine_beyond = std::sqrt(std::max(0.0, 1.0 - cosine * cosine)) / ratio;
  if (sine_beyond >= 1.0) return {1.0, 1.0, 0.0};
  const double beyond = std::sqrt(1.0 - sine_beyond * sine_beyond);
  const double s = (cosine - ratio * beyond) / (cosine + ratio * beyond);
  const double p = (ratio * cosine - beyond) / (ratio * cosine + beyond);
  return {s * s, p * p, beyond};
}

double face_reflectance(double ratio, double cosine) {
  const Face face = face_between(ratio, cosine);
  return 0.5 * (face.reflectance_s + face.reflectance_p);
}

}  // namespace fillside
