// The lobe of rough metal: the GGX microfacet distribution with Smith's height-correlated masking, of
// reflectance 1. Light meets one facet; what would meet a second one is lost (lobe_energy.h says how much
// that is). Walter, Marschner, Li, Torrance, "Microfacet Models for Refraction through Rough Surfaces", EGSR
// 2007, eqs. 20, 33; Heitz, "Understanding the Masking-Shadowing Function", JCGT 3(2), 2014, eq. 99; visible
// normals drawn as in Dupuy and Benyoub, "Sampling Visible GGX Normals with Spherical Caps", CGF 42(8), 2023,
// listing 3.
#pragma once

#include "libsim/base/space.h"

namespace fillside {

/// The lobe times the cosine. Here and below: alpha > 0 and both directions above the surface.
double lobe_cosine_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source);

/// Normal of a facet among those that the viewer sees; it mirrors the viewer into the lobe, or below the
/// horizon.
Direction draw_visible_normal(double alpha, const Direction& to_viewer, double u, double v);
/// The same with the azimuth already turned into its cosine and sine.
Direction draw_visible_normal(double alpha, const Direction& to_viewer, const Eigen::Vector2d& azimuth,
                              double v);

/// Density of directions mirrored by such a facet.
double lobe_density_per_sr(double alpha, const Direction& to_viewer, const Direction& to_source);

/// Share of the light of a facet the viewer sees that no other facet keeps from the source: lobe x cosine /
/// density.
double unblocked_share(double alpha, double viewer_cosine, double source_cosine);

}  // namespace fillside
