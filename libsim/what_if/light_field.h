// The light at a point as a whole: where it comes from in sum, and how much of it there is from all round.
#pragma once

#include <array>

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"
#include "libsim/base/space.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/effort.h"

namespace fillside {

/// The light vector's components are differences of opposite flat readings (Cuttle, "Cubic illumination",
/// Lighting Research and Technology 29(1), 1997). The mean spherical illuminance is a quarter of the radiance
/// summed over all directions, which two domes back to back read: (1 + cos) / 2 + (1 - cos) / 2 = 1. The
/// cylindrical illuminance is the mean of upright flat readings all round, here of twelve.
struct LightField {
  std::array<Estimate, 3> vector_lx;  ///< x, y, z; points to where the light comes from
  Estimate spherical_lx, cylindrical_lx, level_lx;

  Estimate length_lx() const;         ///< of the vector
  Estimate along_lx() const;          ///< its level part: what draws relief on the table
  Estimate vector_to_scalar() const;  ///< 0 even from all round, 4 one far source
  Estimate cylindrical_to_level() const;
  Angle altitude() const;  ///< of the vector over the table
};

/// The subject away.
LightField read_light_field(const Scene& scene, const Point& place, const Effort& effort);

}  // namespace fillside
