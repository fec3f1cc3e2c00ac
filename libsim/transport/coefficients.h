// Daylight coefficients: how much each patch of the outside gives a meter per unit of its radiance, by every
// way through the room. Measured once, they answer for any sky. Tregenza and Waters, "Daylight coefficients",
// Lighting Research and Technology 15(2), 1983.
#pragma once

#include <Eigen/Core>
#include <string>
#include <vector>

#include "libsim/light/sky_patches.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/measure.h"

namespace fillside {

/// Per unit of each colour channel, weighted so that the sum over channels is lx; one line a replicate.
struct Coefficients {
  using PerPatch = Eigen::Matrix<float, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  using PerChannel = Eigen::Matrix<float, Eigen::Dynamic, 3>;

  std::string name;
  PerPatch all;  ///< replicates x (3 x patches): lx per radiance; straight, turned and through curtains
  /// replicates x (3 x fine patches): the part that met something on its way and was not spread by a curtain
  PerPatch turned;
  /// By emitter: lx per lx on the room side of its glass, through its curtain; 0 without one.
  std::vector<PerChannel> by_curtain;
  Eigen::VectorXf lamps;  ///< lx
  RefusedSamples refused;

  int replicates() const { return static_cast<int>(all.rows()); }
  /// By an even outside of radiance 1.
  Estimate of_even_outside() const;
};

/// One figure a replicate as an Estimate.
Estimate estimate_of(const Eigen::VectorXf& replicates);

/// The set must stand before an even outside of radiance 1 (even_outside), so that what each patch gives is
/// counted once; `sensor` is a meter or a patch. Same bytes for any number of threads.
Coefficients measure_coefficients(const Scene& scene, const Sensor& sensor, const Budget& budget);

}  // namespace fillside
