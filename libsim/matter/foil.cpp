#include "libsim/matter/foil.h"

#include <cmath>

#include "libsim/matter/lobe.h"
#include "libsim/matter/lobe_energy.h"
#include "libsim/matter/matte.h"

namespace fillside {
namespace {

bool has_lobe(const Foil& foil) { return foil.specular_share > 0.0 && foil.roughness > 0.0; }

Direction above(const Direction& d) { return d.z() < 0.0 ? Direction(-d) : d; }

/// Share of the reflected light that comes mirror-wise, by one facet; the rest comes from wide around. Draws
/// go by it.
double mirrored_share(const Foil& foil, const Direction& to_viewer) {
  const double loss = has_lobe(foil) ? lobe_loss(foil.roughness, std::abs(to_viewer.z())) : 0.0;
  return foil.specular_share * (1.0 - loss);
}

/// Wide scattering over that of a matte surface: the matte part, and what compensates the lobe.
double wide_over_matte(const Foil& foil, const Direction& to_viewer, const Direction& to_source) {
  const double matte = 1.0 - foil.specular_share;
  if (!has_lobe(foil)) return matte;
  const double viewer = lobe_loss(foil.roughness, std::abs(to_viewer.z()));
  const double source = lobe_loss(foil.roughness, std::abs(to_source.z()));
  return matte + foil.specular_share * viewer * (source / mean_lobe_loss(foil.roughness));
}

std::optional<Direction> draw_lobe(const Foil& foil, const Direction& to_viewer, const Numbers4& u) {
  const Direction viewer = above(to_viewer);
  Direction to_source = reflected(viewer, draw_visible_normal(foil.roughness, viewer, u[0], u[1]));
  if (to_source.z() <= 0.0) return std::nullopt;
  return to_viewer.z() < 0.0 ? Direction(-to_source) : to_source;
}

}  // namespace

Rgb scattering_cosine_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return grey(0.0);
  const double wide = wide_over_matte(foil, to_viewer, to_source);
  Rgb sum = wide * scattering_cosine_per_sr(Matte{foil.reflectance}, to_viewer, to_source);
  if (has_lobe(foil))
    sum += foil.reflectance *
           (foil.specular_share * lobe_cosine_per_sr(foil.roughness, above(to_viewer), above(to_source)));
  return sum;
}

double density_of_scattering_per_sr(const Foil& foil, const Direction& to_viewer,
                                    const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return 0.0;
  const double mirrored = mirrored_share(foil, to_viewer);
  double density = (1.0 - mirrored) * density_of_scattering_per_sr(Matte{}, to_viewer, to_source);
  if (has_lobe(foil))
    density += mirrored * lobe_density_per_sr(foil.roughness, above(to_viewer), above(to_source));
  return density;
}

std::optional<Scattered> draw_scattering(const Foil& foil, const Direction& to_viewer, const Numbers4& u) {
  std::optional<Direction> to_source;
  if (u[2] < mirrored_share(foil, to_viewer)) {
    if (foil.roughness <= 0.0)
      return Scattered{
          {-to_viewer.x(), -to_viewer.y(), to_viewer.z()}, foil.reflectance, 0.0, Turn::mirrored};
    to_source = draw_lobe(foil, to_viewer, u);
  } else if (const auto wide = draw_scattering(Matte{}, to_viewer, u)) {
    to_source = wide->to_source;
  }
  if (!to_source) return std::nullopt;
  const double density = density_of_scattering_per_sr(foil, to_viewer, *to_source);
  if (!(density > 0.0)) return std::nullopt;
  return Scattered{*to_source, scattering_cosine_per_sr(foil, to_viewer, *to_source) / density, density,
                   Turn::spread};
}

}  // namespace fillside
