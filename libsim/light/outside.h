// What is seen through a window: sky, sun, what stands before the sky, and the ground; or one even luminance.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "libsim/base/colour.h"
#include "libsim/base/quantity.h"
#include "libsim/light/daylight.h"
#include "libsim/light/general_sky.h"
#include "libsim/light/lit_skyline.h"
#include "libsim/light/sun.h"

namespace fillside {

/// The sky above the horizon and above what stands before it.
struct Sky {
  GeneralSky sky;
  Rgb zenith_radiance = grey(0.0);
  Skyline skyline = OpenSkyline{};
};

/// An even plane to the horizon.
struct Ground {
  Rgb radiance = grey(0.0);
};

/// The same radiance from every direction.
struct EvenOutside {
  Rgb radiance = grey(0.0);
};

/// A part of the outside that the results keep apart. To add one: give it a struct, a case in radiance_of,
/// and a name where the outside is put together.
struct OutsidePart {
  std::string name;  ///< "sky", "sun", "skyline", "ground"; empty when there is only one
  std::variant<Sky, SunDisc, LitSkyline, Ground, EvenOutside> light;
};

/// In the order in which the rows list them; at most kMostOutsideParts.
using Outside = std::vector<OutsidePart>;
inline constexpr std::size_t kMostOutsideParts = 4;

/// Radiance that arrives along -outward from that part of the outside.
Rgb radiance_of(const OutsidePart& part, const Direction& outward);

/// The sun's part and disc; nothing when it does not shine.
struct SunPart {
  std::size_t part;
  SunDisc disc;
};
std::optional<SunPart> sun_of(const Outside& outside);

/// Daylight with what stands before the sky; a sun behind the skyline does not shine in. The ground is lit as
/// open ground is.
Outside daylit(Daylight light, const Skyline& skyline = OpenSkyline{},
               const Rgb& skyline_reflectance = grey(0.3));

/// Sky of a type (1 to 16) that looks the same all round, and evenly lit ground, from the illuminance on open
/// level ground.
Outside sky_and_ground(int sky_type, Illuminance outdoor, const Rgb& ground_reflectance);
Outside even_outside(Luminance luminance);

}  // namespace fillside
