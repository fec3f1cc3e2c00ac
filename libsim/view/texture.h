// What the light makes of small relief: crumb, crust, weave. Light on a surface is taken as its light vector:
// the part along the surface draws, the part onto it only lights. Exact while no facet turns away from part
// of the source, and for one far source beyond that; interreflection in the dents is left out.
#pragma once

#include "libsim/base/quantity.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/key.h"

namespace fillside {

/// (brightest - darkest) / (brightest + darkest), and standard deviation / mean, of the illuminance.
struct TextureContrast {
  double michelson = 0.0, rms = 0.0;
};

/// Of a groove with straight walls of +-`facet`: tan(facet) x along / onto, 1 at most.
TextureContrast groove_contrast(Angle facet, double along_lx, double onto_lx);

/// Of waves z = h sin(2 pi x / l) across the light, whose steepest slope is 2 pi h / l.
TextureContrast wave_contrast(double steepest_slope, double along_lx, double onto_lx);

/// How long a bump's shadow is on level ground, per height: 1 / tan(elevation).
double shadow_per_height(Angle elevation);

/// Share of those waves' ground that a far source at that elevation leaves in shadow, turned away or cast on;
/// 0 while it stands higher than the steepest slope.
double shadowed_share(double steepest_slope, Angle elevation);

/// Height angle of the key over a place's horizon: of its lower edge, middle and upper edge.
struct KeyElevation {
  Angle low, middle, high;
};
KeyElevation key_elevation(const Scene& scene, const Key& key, const Point& place);

}  // namespace fillside
