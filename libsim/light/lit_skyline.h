// How bright the skyline is: matte fronts, lit by sky, sun and the ground before them.
#pragma once

#include <array>
#include <optional>

#include "libsim/light/general_sky.h"
#include "libsim/light/skyline.h"
#include "libsim/light/sun.h"

namespace fillside {

/// What lights a front.
struct FrontLight {
  GeneralSky sky;
  Rgb zenith_radiance = grey(0.0);
  std::optional<SunDisc> sun;
  Rgb ground_radiance = grey(0.0);
};

/// Illuminance of an unobstructed upright front that faces `facing` (horizontal): sky, sun, and half of what
/// an even ground plane sends up. Nothing else stands in its light: in a narrow street this is too much.
Rgb front_illuminance(const FrontLight& light, const Direction& facing);

/// A skyline with its fronts' radiance, illuminance x reflectance / pi. The sky's share is worked out once
/// for 72 bearings and taken in straight lines between them; the sun's is exact.
class LitSkyline {
 public:
  LitSkyline(Skyline skyline, const Rgb& reflectance, const FrontLight& light);

  const Skyline& skyline() const { return skyline_; }
  /// Of the front seen in that direction; black where there is sky or ground.
  Rgb radiance(const Direction& outward) const;

 private:
  static constexpr int kBearings = 72;
  Skyline skyline_;
  Rgb reflectance_;
  std::optional<SunDisc> sun_;
  std::array<Rgb, kBearings> even_lx_;  ///< by sky and ground, for fronts that face these bearings
};

}  // namespace fillside
