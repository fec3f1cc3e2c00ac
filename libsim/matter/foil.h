// Foil and mirror: a share of the light goes mirror-wise, exactly (roughness 0) or in a lobe, the rest is
// matte. The lobe by itself loses what would meet a second facet: a sixth to a fifth at the roughness of
// crumpled foil. That light is given back, spread wide, by the compensation of Kulla and Conty, "Revisiting
// Physically Based Shading at Imageworks", SIGGRAPH 2017 course "Physically Based Shading in Theory and
// Practice": (1 - E(viewer)) (1 - E(source)) / (pi (1 - E_avg)), which is the same with both exchanged. It is
// scaled by the reflectance like the lobe (no facet tints it twice), so that the reflectance of a foil is
// what it says, at every angle.
#pragma once

#include <optional>

#include "libsim/base/sample_numbers.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct Foil {
  Rgb reflectance = grey(0.85);  ///< all light that comes back, mirror-wise and matte together
  double specular_share = 1.0;   ///< mirror-wise part of it
  double roughness = 0.0;        ///< GGX alpha; 0: an exact mirror
};

/// All light that comes back adds up to the reflectance within the error of lobe_loss: 0.2 % from roughness
/// 0.05 on.
Rgb scattering_cosine_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const Foil& foil, const Direction& to_viewer, const Numbers4& u);
double density_of_scattering_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source);

}  // namespace fillside
