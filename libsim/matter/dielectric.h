// A smooth face between two clear media: glass and air, tea and air, glass and tea. Light is mirrored by
// Fresnel's share or refracted by Snell's law; on its way through a medium it dies away by depth (Bouguer,
// Essai d'optique, 1729; Lambert, Photometria, 1760; Beer, Annalen der Physik 86, 1852; all from memory).
// Each face knows both of its sides, so that air, glass and liquid may follow one another in any order.
//
// What is seen through it is bent. Light that falls through it is taken as going straight on
// (straight_transmittance in material.h): by flux that is exact for even light on a level face, since what
// refraction gathers into a narrower cone it makes as much brighter; but no glass focuses light on the table,
// and no bright lines (caustics) appear in its shadow.
#pragma once

#include <optional>

#include "libsim/base/colour.h"
#include "libsim/base/sample_numbers.h"
#include "libsim/matter/scattering.h"

namespace fillside {

struct Medium {
  double index = 1.0;
  Rgb absorption_per_m = grey(0.0);  ///< exponent of decay
};

struct Dielectric {
  Medium outside;  ///< where the normal points
  Medium inside{.index = 1.52};
};

/// The medium on the side of a local direction.
const Medium& medium_toward(const Dielectric& face, double local_z);

/// Share of light that is left after that way.
Rgb left_after(const Rgb& absorption_per_m, double distance_m);

std::optional<Scattered> draw_scattering(const Dielectric& face, const Direction& to_viewer,
                                         const Numbers4& u);

/// Share that a face passes, by the angle on its thinner side (where a straight ray has one).
double passed_straight(const Dielectric& face, double cosine);

}  // namespace fillside
