#include "libsim/light/patched_outside.h"

#include <algorithm>

namespace fillside {
namespace {

/// Share of a patch above the rim.
double share_of_sky(const Skyline& skyline, std::size_t patch) {
  if (std::holds_alternative<OpenSkyline>(skyline)) return 1.0;
  constexpr int kSide = 8;
  int free = 0;
  for (int row = 0; row < kSide; ++row)
    for (int column = 0; column < kSide; ++column)
      if (is_sky(skyline, sky_patches::spot_in(patch, (column + 0.5) / kSide, (row + 0.5) / kSide))) ++free;
  return static_cast<double>(free) / (kSide * kSide);
}

void write(Eigen::VectorXf& radiances, std::size_t patch, const Rgb& radiance) {
  for (int channel = 0; channel < 3; ++channel)
    radiances[static_cast<Eigen::Index>(3 * patch) + channel] += static_cast<float>(radiance[channel]);
}

}  // namespace

PatchedOutside::PatchedOutside(const Skyline& skyline, const Rgb& skyline_reflectance)
    : skyline_(skyline), reflectance_(skyline_reflectance) {
  constexpr double kLow = 0.2113249, kHigh = 1.0 - kLow;  // Gauss-Legendre, two points
  for (std::size_t patch = 0; patch < sky_patches::kSky; ++patch) {
    spots_.push_back({sky_patches::spot_in(patch, kLow, kLow), sky_patches::spot_in(patch, kLow, kHigh),
                      sky_patches::spot_in(patch, kHigh, kLow), sky_patches::spot_in(patch, kHigh, kHigh)});
    sky_share_.push_back(share_of_sky(skyline_, patch));
    if (sky_share_.back() < 1.0) fronts_.push_back(front_of(patch, 1.0 - sky_share_.back()));
  }
}

PatchedOutside::Front PatchedOutside::front_of(std::size_t patch, double share) const {
  Front front{patch, share, front_facing(skyline_, sky_patches::centre(patch)), {}};
  for (std::size_t other = 0; other < sky_patches::kSky; ++other)
    front.sr.push_back(std::max(0.0, sky_patches::centre(other).dot(front.facing)) *
                       sky_patches::solid_angle_sr(other));
  return front;
}

void PatchedOutside::add_fronts(const Daylight& light, const std::vector<double>& sky,
                                Eigen::VectorXf& radiances) const {
  for (const Front& front : fronts_) {
    double by_sky_sr = 0.0;
    for (std::size_t patch = 0; patch < sky.size(); ++patch) by_sky_sr += front.sr[patch] * sky[patch];
    Rgb lx = light.zenith_radiance * by_sky_sr + light.ground_radiance * (0.5 * kPi);
    if (light.sun) lx += illuminance_by(*light.sun, front.facing);
    write(radiances, front.patch, reflectance_ * lx * (front.share / kPi));
  }
}

Eigen::VectorXf PatchedOutside::radiances(const Daylight& light) const {
  Eigen::VectorXf radiances = Eigen::VectorXf::Zero(static_cast<Eigen::Index>(3 * sky_patches::kCount));
  std::vector<double> sky(sky_patches::kSky);
  for (std::size_t patch = 0; patch < sky.size(); ++patch) {
    for (const Direction& spot : spots_[patch]) sky[patch] += relative_luminance(light.sky, spot) / kSpots;
    write(radiances, patch, light.zenith_radiance * (sky[patch] * sky_share_[patch]));
  }
  add_fronts(light, sky, radiances);
  write(radiances, sky_patches::kGround, light.ground_radiance);
  return radiances;
}

}  // namespace fillside
