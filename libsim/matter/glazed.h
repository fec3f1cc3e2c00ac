// Glazed: a clear coat over a matte, coloured body. Porcelain, sauce, egg wash, varnished wood, soup. The
// body gets what the coat does not mirror, and sends it back in proportion to (1 - E(viewer)) (1 - E(source))
// / (1 - E_mean), E the share that the coat mirrors: Kelemen and Szirmay-Kalos, "A Microfacet Based Coupled
// Specular-Matte BRDF Model with Importance Sampling", Eurographics 2001 short presentations, section 2
// (section from memory). It runs backwards as forwards, and a white body returns all light at every angle.
// Light that goes to and fro under the coat is in the body's colour already: `body` is what one sees of it.
#pragma once

#include <optional>

#include "libsim/base/colour.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/matter/coat.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct Glazed {
  Rgb body = grey(0.5);  ///< share of the light passed by the coat that comes back, per channel, 0..1
  Coat coat;
};

/// The glazed surface whose share of even light that comes back is `reflectance`, coat and body together (at
/// least what the coat mirrors: the body is black then). The hue is the body's.
Glazed glazed_with_reflectance(const Rgb& hue, double reflectance, const Coat& coat);

/// The body of a glazed surface seen through its coat, without what the coat mirrors.
struct Underglaze {
  Glazed glazed;
};

Rgb scattering_cosine_per_sr(const Glazed& glazed, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const Glazed& glazed, const Direction& to_viewer, const Numbers4& u);
double density_of_scattering_per_sr(const Glazed& glazed, const Direction& to_viewer,
                                    const Direction& to_source);

Rgb scattering_cosine_per_sr(const Underglaze& under, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const Underglaze& under, const Direction& to_viewer,
                                         const Numbers4& u);
double density_of_scattering_per_sr(const Underglaze& under, const Direction& to_viewer,
                                    const Direction& to_source);

/// Share of light from that direction that comes back, to all sides.
Rgb albedo(const Glazed& glazed, const Direction& direction);
Rgb albedo(const Underglaze& under, const Direction& direction);

}  // namespace fillside
