#include "libsim/matter/matte.h"

#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {

Rgb scattering_cosine_per_sr(const Matte& matte, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return grey(0.0);
  return matte.albedo * (std::abs(to_source.z()) / kPi);
}

std::optional<Scattered> draw_scattering(const Matte& matte, const Direction& to_viewer, const Numbers4& u) {
  Direction to_source = draw_cosine_hemisphere(u[0], u[1]);
  if (to_source.z() <= 0.0) return std::nullopt;
  const double density = density_of_cosine_hemisphere_per_sr(to_source.z());
  to_source.z() = std::copysign(to_source.z(), to_viewer.z());
  return Scattered{to_source, matte.albedo, density, Turn::spread};
}

double density_of_scattering_per_sr(const Matte&, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return 0.0;
  return density_of_cosine_hemisphere_per_sr(std::abs(to_source.z()));
}

}  // namespace fillside
