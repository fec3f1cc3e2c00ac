// Foil and mirror: a share of the light goes mirror-wise, exactly (roughness 0) or in a lobe, the rest is matte.
// The lobe is the GGX microfacet distribution with Smith's height-correlated masking and a constant reflectance;
// light that would meet a second facet is lost: of the lobe, 1 to 3 % at roughness 0.1, 5 to 11 % at 0.2 and 12 to
// 18 % at 0.3, seen from 0 to 60 degrees.
// Walter, Marschner, Li, Torrance, "Microfacet Models for Refraction through Rough Surfaces", EGSR 2007, eqs. 20,
// 33; Heitz, "Understanding the Masking-Shadowing Function", JCGT 3(2), 2014, eq. 99; visible normals drawn as in
// Dupuy and Benyoub, "Sampling Visible GGX Normals with Spherical Caps", CGF 42(8), 2023, listing 3.
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

Rgb scattering_cosine_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const Foil& foil, const Direction& to_viewer, const Numbers4& u);
double density_of_scattering_per_sr(const Foil& foil, const Direction& to_viewer, const Direction& to_source);

}  // namespace fillside
