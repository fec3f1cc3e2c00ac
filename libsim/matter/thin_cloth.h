// Thin cloth or paper: sheer, sheet, parchment. Part of the light passes straight between the threads, part
// is scattered through, part is scattered back; both scattered parts are Lambertian. The same from both
// sides.
#pragma once

#include <optional>

#include "libsim/base/sample_numbers.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct ThinCloth {
  Rgb direct = grey(0.0);       ///< share that passes without turning
  Rgb diffuse = grey(0.0);      ///< share that passes scattered
  Rgb reflectance = grey(0.0);  ///< share scattered back; the three add up to at most 1 per channel
};

/// Several layers of it at once, or on average, as in folds; `layers` need not be a whole number. Straight
/// light is what every layer passes straight: direct ^ layers. All that passes, and all that comes back, is
/// that of a pile of plates with light going to and fro between them: Stokes, "On the Intensity of the Light
/// reflected from or transmitted through a Pile of Plates", Proceedings of the Royal Society 11, 1862, which
/// is stated for whole numbers and smooth between them. The straight share counts as spread once it has been
/// sent back.
ThinCloth layered(const ThinCloth& cloth, double layers);

Rgb scattering_cosine_per_sr(const ThinCloth& cloth, const Direction& to_viewer, const Direction& to_source);
std::optional<Scattered> draw_scattering(const ThinCloth& cloth, const Direction& to_viewer,
                                         const Numbers4& u);
double density_of_scattering_per_sr(const ThinCloth& cloth, const Direction& to_viewer,
                                    const Direction& to_source);

}  // namespace fillside
