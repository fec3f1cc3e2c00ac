#include "libsim/matter/thin_cloth.h"

#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {
namespace {

/// With what probability each of the three ways is drawn.
struct Ways {
  double back, through, straight;
};

Ways ways_of(const ThinCloth& cloth) {
  const double back = luminance(cloth.reflectance), through = luminance(cloth.diffuse), straight = luminance(cloth.direct);
  const double all = back + through + straight;
  if (all <= 0.0) return {0.0, 0.0, 0.0};
  return {back / all, through / all, straight / all};
}

Scattered spread(const Rgb& share, double probability, double side, double u, double v) {
  Direction to_source = draw_cosine_hemisphere(u, v);
  const double density = probability * density_of_cosine_hemisphere_per_sr(to_source.z());
  to_source.z() = std::copysign(to_source.z(), side);
  return {to_source, share / probability, density, Turn::spread};
}

}  // namespace

Rgb scattering_cosine_per_sr(const ThinCloth& cloth, const Direction& to_viewer, const Direction& to_source) {
  const Rgb& share = to_viewer.z() * to_source.z() > 0.0 ? cloth.reflectance : cloth.diffuse;
  return share * (std::abs(to_source.z()) / kPi);
}

std::optional<Scattered> draw_scattering(const ThinCloth& cloth, const Direction& to_viewer, const Numbers4& u) {
  const Ways ways = ways_of(cloth);
  if (u[2] < ways.back) return spread(cloth.reflectance, ways.back, to_viewer.z(), u[0], u[1]);
  if (u[2] < ways.back + ways.through) return spread(cloth.diffuse, ways.through, -to_viewer.z(), u[0], u[1]);
  if (ways.straight <= 0.0) return std::nullopt;
  return Scattered{-to_viewer, cloth.direct / ways.straight, 0.0, Turn::straight};
}

double density_of_scattering_per_sr(const ThinCloth& cloth, const Direction& to_viewer, const Direction& to_source) {
  const Ways ways = ways_of(cloth);
  const double probability = to_viewer.z() * to_source.z() > 0.0 ? ways.back : ways.through;
  return probability * density_of_cosine_hemisphere_per_sr(std::abs(to_source.z()));
}

}  // namespace fillside
