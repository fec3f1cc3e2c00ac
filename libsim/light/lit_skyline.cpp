#include "libsim/light/lit_skyline.h"

#include <cmath>
#include <utility>

#include "libsim/light/horizon.h"

namespace fillside {
namespace {

Rgb even_illuminance(const FrontLight& light, const Direction& facing) {
  return light.zenith_radiance * vertical_illuminance_per_zenith_luminance(light.sky, facing) +
         light.ground_radiance * (0.5 * kPi);
}

}  // namespace

Rgb front_illuminance(const FrontLight& light, const Direction& facing) {
  const Rgb even = even_illuminance(light, facing);
  return light.sun ? Rgb(even + illuminance_by(*light.sun, facing)) : even;
}

LitSkyline::LitSkyline(Skyline skyline, const Rgb& reflectance, const FrontLight& light)
    : skyline_(std::move(skyline)), reflectance_(reflectance), sun_(light.sun) {
  const bool same_all_round = !depends_on_sun(light.sky.type);
  for (int i = 0; i < kBearings; ++i) {
    const auto at = static_cast<std::size_t>(i);
    even_lx_[at] = same_all_round && i > 0
                       ? even_lx_[0]
                       : even_illuminance(light, toward_azimuth(2.0 * kPi * i / kBearings));
  }
}

Rgb LitSkyline::radiance(const Direction& outward) const {
  if (!is_skyline(skyline_, outward)) return grey(0.0);
  const Direction facing = front_facing(skyline_, outward);
  const double bearing = azimuth_of(facing) / (2.0 * kPi) * kBearings;
  const auto before = static_cast<std::size_t>(bearing);
  const double share = bearing - std::floor(bearing);
  Rgb illuminance_lx =
      (1.0 - share) * even_lx_[before % kBearings] + share * even_lx_[(before + 1) % kBearings];
  if (sun_) illuminance_lx += illuminance_by(*sun_, facing);
  return illuminance_lx * reflectance_ / kPi;
}

}  // namespace fillside
