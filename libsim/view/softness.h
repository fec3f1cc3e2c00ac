// How soft a shadow's edge is: over which way the key comes into view. 10-90 % because the ends of an edge
// are lost in noise and in the eye alike.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/key.h"

namespace fillside {

/// Key visibility (0..1) at even steps along a line that crosses an edge from shadow into light.
struct EdgeProfile {
  double step_mm = 1.0;
  std::vector<Estimate> visibility;

  double length_mm() const { return step_mm * static_cast<double>(visibility.size()); }
};

/// Where along the line, in mm from the first reading, the visibility passes the given share for the first
/// time. Noise must not move edges: the profile is first made to rise, as near to the readings as a rising
/// line can be. Ayer, Brunk, Ewing, Reid, Silverman, "An empirical distribution function for sampling with
/// incomplete information", Annals of Mathematical Statistics 26(4), 1955 (pooling of neighbours that fall).
/// Nothing when the share is not passed within the line.
std::optional<Estimate> passes_mm(const EdgeProfile& profile, double share);

/// The way from 10 % to 90 % of the key.
std::optional<Estimate> edge_width_mm(const EdgeProfile& profile);

/// Hard, medium or soft, by our own limits for things of a dish's size: an edge under 5 mm reads as a line,
/// one over 30 mm has no place.
enum class Hardness { hard, medium, soft };
inline constexpr Length kHardUnder = millimetres(5), kSoftOver = millimetres(30);
Hardness hardness_of(Length edge_width);
std::string_view word_of(Hardness hardness);

/// Over how much of a ball's skin its shadow line is spread: the width of the key, and of the cloths that are
/// part of it, as seen from there, level. Geometry alone: what stands before the key is not asked, and where
/// the sun looks in, its own half degree makes a second, hard line within.
Angle terminator_spread(const Scene& scene, const Key& key, const Point& seen_from);

}  // namespace fillside
