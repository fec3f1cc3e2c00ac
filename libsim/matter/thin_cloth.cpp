#include "libsim/matter/thin_cloth.h"

#include <algorithm>
#include <cmath>

#include "libsim/base/warp.h"

namespace fillside {
namespace {

/// With what probability each of the three ways is drawn.
struct Ways {
  double back, through, straight;
};

Ways ways_of(const ThinCloth& cloth) {
  const double back = luminance(cloth.reflectance), through = luminance(cloth.diffuse),
               straight = luminance(cloth.direct);
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

struct Pile {
  double transmitted, returned;
};

/// Stokes's pile for one channel. With D = sqrt((1+r+t)(1+r-t)(1-r+t)(1-r-t)), a = (1+r2-t2+D)/2r, b =
/// (1-r2+t2+D)/2t: returned / (b^m - b^-m) = transmitted / (a - 1/a) = 1 / (a b^m - 1/(a b^m)).
Pile pile_of(double t, double r, double m) {
  if (t <= 0.0) return {0.0, r};
  if (r <= 1e-9) return {std::pow(t, m), r};
  const double d2 = (1.0 + r + t) * (1.0 + r - t) * (1.0 - r + t) * (1.0 - r - t);
  if (d2 < 1e-12) {  // no absorption: a = b = 1, and the limit is
    const double passed = t / (t + m * r);
    return {passed, 1.0 - passed};
  }
  const double d = std::sqrt(d2);
  const double a = (1.0 + r * r - t * t + d) / (2.0 * r), b = (1.0 - r * r + t * t + d) / (2.0 * t);
  const double bm = std::pow(b, m), below = a * bm - 1.0 / (a * bm);
  return {(a - 1.0 / a) / below, (bm - 1.0 / bm) / below};
}

}  // namespace

ThinCloth layered(const ThinCloth& cloth, double layers) {
  ThinCloth pile;
  for (int channel = 0; channel < 3; ++channel) {
    const double straight = std::pow(cloth.direct[channel], layers);
    const Pile all =
        pile_of(cloth.direct[channel] + cloth.diffuse[channel], cloth.reflectance[channel], layers);
    pile.direct[channel] = straight;
    pile.diffuse[channel] = std::max(0.0, all.transmitted - straight);
    pile.reflectance[channel] = all.returned;
  }
  return pile;
}

Rgb scattering_cosine_per_sr(const ThinCloth& cloth, const Direction& to_viewer, const Direction& to_source) {
  const Rgb& share = to_viewer.z() * to_source.z() > 0.0 ? cloth.reflectance : cloth.diffuse;
  return share * (std::abs(to_source.z()) / kPi);
}

std::optional<Scattered> draw_scattering(const ThinCloth& cloth, const Direction& to_viewer,
                                         const Numbers4& u) {
  const Ways ways = ways_of(cloth);
  if (u[2] < ways.back) return spread(cloth.reflectance, ways.back, to_viewer.z(), u[0], u[1]);
  if (u[2] < ways.back + ways.through) return spread(cloth.diffuse, ways.through, -to_viewer.z(), u[0], u[1]);
  if (ways.straight <= 0.0) return std::nullopt;
  return Scattered{-to_viewer, cloth.direct / ways.straight, 0.0, Turn::straight};
}

double density_of_scattering_per_sr(const ThinCloth& cloth, const Direction& to_viewer,
                                    const Direction& to_source) {
  const Ways ways = ways_of(cloth);
  const double probability = to_viewer.z() * to_source.z() > 0.0 ? ways.back : ways.through;
  return probability * density_of_cosine_hemisphere_per_sr(std::abs(to_source.z()));
}

}  // namespace fillside
