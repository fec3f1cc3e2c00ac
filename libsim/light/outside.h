// What is seen through a window: the sky above the horizon, the ground below it, or one even luminance.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/base/quantity.h"
#include "libsim/light/sky.h"

namespace fillside {

/// Radiance of the upper half of the directions.
struct Sky {
  SkyKind kind = SkyKind::overcast;
  Rgb zenith_radiance = grey(0.0);
};

/// An even plane to the horizon.
struct Ground {
  Rgb radiance = grey(0.0);
};

/// The same radiance from every direction.
struct EvenOutside {
  Rgb radiance = grey(0.0);
};

/// A part of the outside that the results keep apart. To add one: give it a struct, a case in radiance_of, and a
/// name where the outside is put together.
struct OutsidePart {
  std::string name;  ///< "sky", "ground"; empty when there is only one
  std::variant<Sky, Ground, EvenOutside> light;
};

/// In the order in which the rows list them; at most kMostOutsideParts.
using Outside = std::vector<OutsidePart>;
inline constexpr std::size_t kMostOutsideParts = 4;

/// Radiance that arrives along -outward from that part of the outside.
Rgb radiance_of(const OutsidePart& part, const Direction& outward);

/// Sky and evenly lit ground, from the illuminance on open level ground.
Outside sky_and_ground(SkyKind sky, Illuminance outdoor, const Rgb& ground_reflectance);
Outside even_outside(Luminance luminance);

}  // namespace fillside
