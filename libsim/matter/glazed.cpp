#include "libsim/matter/glazed.h"

#include <algorithm>
#include <cmath>

#include "libsim/matter/lobe.h"
#include "libsim/matter/matte.h"

namespace fillside {
namespace {

Direction above(const Direction& d) { return d.z() < 0.0 ? Direction(-d) : d; }

/// The coat's part of all light that comes back to this viewer. Draws go by it.
double coats_part(const Glazed& glazed, const Direction& to_viewer) {
  const double mirrored = glazed.coat.mirrored(std::abs(to_viewer.z()));
  const double all = mirrored + glazed.body.maxCoeff() * (1.0 - mirrored);
  return all > 0.0 ? mirrored / all : 0.0;
}

std::optional<Direction> draw_lobe(const Coat& coat, const Direction& to_viewer, const Numbers4& u) {
  const Direction viewer = above(to_viewer);
  const Direction to_source = reflected(viewer, draw_visible_normal(coat.roughness(), viewer, u[0], u[1]));
  if (to_source.z() <= 0.0) return std::nullopt;
  return to_viewer.z() < 0.0 ? Direction(-to_source) : to_source;
}

}  // namespace

Glazed glazed_with_reflectance(const Rgb& hue, double reflectance, const Coat& coat) {
  const double of_coat = coat.mean_mirrored();
  const double of_body = std::max(0.0, (reflectance - of_coat) / (1.0 - of_coat));
  return {scaled_to_reflectance(hue, of_body), coat};
}

Rgb scattering_cosine_per_sr(const Underglaze& under, const Direction& to_viewer,
                             const Direction& to_source) {
  const Coat& coat = under.glazed.coat;
  const double in_and_out = (1.0 - coat.mirrored(std::abs(to_viewer.z()))) *
                            (1.0 - coat.mirrored(std::abs(to_source.z()))) / (1.0 - coat.mean_mirrored());
  return in_and_out * scattering_cosine_per_sr(Matte{under.glazed.body}, to_viewer, to_source);
}

double density_of_scattering_per_sr(const Underglaze&, const Direction& to_viewer,
                                    const Direction& to_source) {
  return density_of_scattering_per_sr(Matte{}, to_viewer, to_source);
}

std::optional<Scattered> draw_scattering(const Underglaze& under, const Direction& to_viewer,
                                         const Numbers4& u) {
  auto drawn = draw_scattering(Matte{}, to_viewer, u);
  if (drawn)
    drawn->weight = scattering_cosine_per_sr(under, to_viewer, drawn->to_source) / drawn->density_per_sr;
  return drawn;
}

Rgb scattering_cosine_per_sr(const Glazed& glazed, const Direction& to_viewer, const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return grey(0.0);
  Rgb sum = scattering_cosine_per_sr(Underglaze{glazed}, to_viewer, to_source);
  if (!glazed.coat.smooth()) sum += glazed.coat.lobe_cosine_per_sr(above(to_viewer), above(to_source));
  return sum;
}

double density_of_scattering_per_sr(const Glazed& glazed, const Direction& to_viewer,
                                    const Direction& to_source) {
  if (to_viewer.z() * to_source.z() <= 0.0) return 0.0;
  const double of_coat = coats_part(glazed, to_viewer);
  double density = (1.0 - of_coat) * density_of_scattering_per_sr(Matte{}, to_viewer, to_source);
  if (!glazed.coat.smooth())
    density += of_coat * glazed.coat.lobe_density_per_sr(above(to_viewer), above(to_source));
  return density;
}

std::optional<Scattered> draw_scattering(const Glazed& glazed, const Direction& to_viewer,
                                         const Numbers4& u) {
  std::optional<Direction> to_source;
  const double of_coat = coats_part(glazed, to_viewer);
  if (u[2] < of_coat) {
    if (glazed.coat.smooth())
      return Scattered{{-to_viewer.x(), -to_viewer.y(), to_viewer.z()},
                       grey(glazed.coat.mirrored(std::abs(to_viewer.z())) / of_coat),
                       0.0,
                       Turn::mirrored};
    to_source = draw_lobe(glazed.coat, to_viewer, u);
  } else if (const auto wide = draw_scattering(Matte{}, to_viewer, u)) {
    to_source = wide->to_source;
  }
  if (!to_source) return std::nullopt;
  const double density = density_of_scattering_per_sr(glazed, to_viewer, *to_source);
  if (!(density > 0.0)) return std::nullopt;
  return Scattered{*to_source, scattering_cosine_per_sr(glazed, to_viewer, *to_source) / density, density,
                   Turn::spread};
}

Rgb albedo(const Underglaze& under, const Direction& direction) {
  return under.glazed.body * (1.0 - under.glazed.coat.mirrored(std::abs(direction.z())));
}

Rgb albedo(const Glazed& glazed, const Direction& direction) {
  return albedo(Underglaze{glazed}, direction) + glazed.coat.mirrored(std::abs(direction.z()));
}

}  // namespace fillside
