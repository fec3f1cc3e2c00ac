#include "libsim/matter/foil.h"

#include <algorithm>
#include <cmath>

#include "libsim/matter/matte.h"

namespace fillside {
namespace {

bool has_lobe(const Foil& foil) { return foil.specular_share > 0.0 && foil.roughness > 0.0; }

Direction above(const Direction& d) { return d.z() < 0.0 ? Direction(-d) : d; }

double ggx_per_sr(double alpha, double cosine) {
  const double stretched = cosine * cosine * (alpha * alpha - 1.0) + 1.0;
  return alpha * alpha / (kPi * stretched * stretched);
}

/// Smith's Lambda of GGX.
double shadowing(double alpha, double cosine) {
  const double tangent2 = std::max(0.0, 1.0 / (cosine * cosine) - 1.0);
  return 0.5 * (std::sqrt(1.0 + alpha * alpha * tangent2) - 1.0);
}

/// Density of the half direction among the normals that the viewer sees.
double visible_normal_per_sr(double alpha, const Direction& to_viewer, const Direction& half) {
  return ggx_per_sr(alpha, half.z()) * to_viewer.dot(half) / (to_viewer.z() * (1.0 + shadowing(alpha, to_viewer.z())));
}

Direction draw_visible_normal(double alpha, const Direction& to_viewer, double u, double v) {
  const Direction stretched = Direction(alpha * to_viewer.x(), alpha * to_viewer.y(), to_viewer.z()).normalized();
  const double angle = 2.0 * kPi * u, z = (1.0 - v) * (1.0 + stretched.z()) - stretched.z();
  const double sine = std::sqrt(std::clamp(1.0 - z * z, 0.0, 1.0));
  const Direction cap = Direction(sine * std::cos(angle), sine * std::sin(angle), z) + stretched;
  return Direction(alpha * cap.x(), alpha * cap.y(), cap.z()).normalized();
}

/// The lobe alone, times the cosine; both directions above the surface.
double lobe_cosine_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source) {
  const Direction half = (to_viewer + to_source).normalized();
  const double masking = 1.0 / (1.0 + shadowing(alpha, to_viewer.z()) + shadowing(alpha, to_source.z()));
  return ggx_per_sr(alpha, half.z()) * masking / (4.0 * to_viewer.z());
}

double lobe_density_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source) {
  const Direction half = (to_viewer + to_source).normalized();
  return visible_normal_per_sr(alpha, to_viewer, half) / (4.0 * to_viewer.dot(half));
}

Matte matte_part(const Foil& foil) { return {foil.reflectance * (1.0 - foil.specular_share)}; }

std::optional<Direction> draw_lobe(const Foil& foil, const Direction& to_viewer, const Numbers4& u) {
  const Direction viewer = above(to_viewer);
  Direction to_source = reflected(viewer, draw_visible_normal(foil.roughness, viewer, u[0], u[1]));
  if (to_source.z() <= 0.0) return std::nullopt;
  return to_viewer.z() < 0.0 ? Direction(-to_source) : to_source;
}

}  // namespace

Rgb scattering_cosine_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return grey(0.0);
  Rgb sum = scattering_cosine_per_sr(matte_part(foil), to_viewer, to_source);
  if (has_lobe(foil))
    sum += foil.reflectance * (foil.specular_share * lobe_cosine_per_sr(foil.roughness, above(to_viewer), above(to_source)));
  return sum;
}

double density_of_scattering_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return 0.0;
  double density = (1.0 - foil.specular_share) * density_of_scattering_per_sr(Matte{}, to_viewer, to_source);
  if (has_lobe(foil))
    density += foil.specular_share * lobe_density_per_sr(foil.roughness, above(to_viewer), above(to_source));
  return density;
}

std::optional<Scattered> draw_scattering(const Foil& foil, const Direction& to_viewer, const Numbers4& u) {
  std::optional<Direction> to_source;
  if (u[2] < foil.specular_share) {
    if (foil.roughness <= 0.0)
      return Scattered{{-to_viewer.x(), -to_viewer.y(), to_viewer.z()}, foil.reflectance, 0.0, Turn::mirrored};
    to_source = draw_lobe(foil, to_viewer, u);
  } else if (const auto matte = draw_scattering(matte_part(foil), to_viewer, u)) {
    to_source = matte->to_source;
  }
  if (!to_source) return std::nullopt;
  const double density = density_of_scattering_per_sr(foil, to_viewer, *to_source);
  if (!(density > 0.0)) return std::nullopt;
  return Scattered{*to_source, scattering_cosine_per_sr(foil, to_viewer, *to_source) / density, density, Turn::spread};
}

}  // namespace fillside
