// The outside as daylight coefficients want it: one mean radiance for each patch of sky_patches.h.
#pragma once

#include <Eigen/Core>
#include <array>
#include <vector>

#include "libsim/light/daylight.h"
#include "libsim/light/sky_patches.h"
#include "libsim/light/skyline.h"

namespace fillside {

class PatchedOutside {
 public:
  PatchedOutside(const Skyline& skyline, const Rgb& skyline_reflectance);

  /// Radiance of each patch, three channels one after the other, without the sun itself; patches that the
  /// skyline cuts get its share of their solid angle. Fronts are lit as LitSkyline says, the sky's share
  /// summed over patches.
  Eigen::VectorXf radiances(const Daylight& light) const;
  /// Whether the sun's middle stands above the horizon and clear of the skyline.
  bool sun_is_free(const Direction& to_sun) const { return is_sky(skyline_, to_sun); }

 private:
  struct Front {
    std::size_t patch;
    double share;            ///< of the patch's solid angle
    Direction facing;        ///< the way the front looks
    std::vector<double> sr;  ///< illuminance of the front per unit of each sky patch
  };
  Front front_of(std::size_t patch, double share) const;
  void add_fronts(const Daylight& light, const std::vector<double>& sky, Eigen::VectorXf& radiances) const;

  static constexpr std::size_t kSpots = 4;
  Skyline skyline_;
  Rgb reflectance_;
  std::vector<std::array<Direction, kSpots>> spots_;  ///< of each sky patch
  std::vector<Front> fronts_;
  std::vector<double> sky_share_;
};

}  // namespace fillside
