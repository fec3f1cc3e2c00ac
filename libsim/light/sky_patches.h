// The outside cut into patches: the sky in rows of equal height, the ground as one. Tregenza, "Subdivision of
// the sky hemisphere for luminance measurements", Lighting Research and Technology 19(1), 1987: 145 patches;
// each cut in four as in Reinhart and Walkenhorst, "Validation of dynamic RADIANCE-based daylight simulations
// for a test office with external blinds", Energy and Buildings 33(7), 2001: 577 with the one at the zenith.
#pragma once

#include <cstddef>

#include "libsim/base/space.h"

namespace fillside {

namespace sky_patches {

inline constexpr std::size_t kSky = 577;     ///< the last of them lies round the zenith
inline constexpr std::size_t kGround = 577;  ///< bin of everything below the horizon
inline constexpr std::size_t kCount = 578;

/// The bin of a direction in the set's own axes; bearings run clockwise from the y axis.
std::size_t bin_of(const Direction& outward);

/// A spot of a sky bin: `across` and `up` from 0 to 1 are even in solid angle.
Direction spot_in(std::size_t bin, double across, double up);
/// Its middle; straight down for the ground.
Direction centre(std::size_t bin);
double solid_angle_sr(std::size_t bin);

/// The same sky with every patch but the one at the zenith cut in four once more, for the sun: it stands in
/// one place, and what a room makes of its beam changes within a few degrees.
inline constexpr std::size_t kFineSky = 4 * (kSky - 1) + 1;
inline constexpr std::size_t kFineGround = kFineSky, kFineCount = kFineSky + 1;
std::size_t fine_bin_of(const Direction& outward);
/// The bin that a fine one lies in.
std::size_t bin_around(std::size_t fine_bin);
double fine_solid_angle_sr(std::size_t fine_bin);
Direction fine_centre(std::size_t fine_bin);

/// A direction as a mean of the fine bins around it, weights adding up to 1: in straight lines between the
/// middles of the two rows above and below, and within each row between the two bins beside it.
struct Share {
  std::size_t bin;
  double weight;
};
struct Shares {
  Share of[4];
};
Shares shares_of(const Direction& outward);

}  // namespace sky_patches

}  // namespace fillside
