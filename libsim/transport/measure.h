// Measuring: instruments in a scene, with a budget of samples, give Measurements.
#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <variant>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/sensor/meter.h"
#include "libsim/sensor/patch.h"
#include "libsim/transport/kept_light.h"
#include "libsim/transport/measurement.h"
#include "libsim/transport/parts.h"

namespace fillside {

using Sensor = std::variant<Meter, Patch, MapPlane, Camera>;

struct Budget {
  std::uint32_t samples = 256;     ///< per element and replicate; powers of two converge best
  std::uint32_t first_sample = 0;  ///< to go on where an earlier measurement stopped
  int first_replicate = 0;         ///< to measure replicates one after the other
  int replicates = kMostReplicates;
  std::uint64_t seed = 1;
  int threads = 0;                              ///< 0: all; the result is the same bytes for any number
  Parts parts = kAllParts;                      ///< a camera always takes all
  const KeptLight* kept = nullptr;              ///< cached mode; its mask must be the sensor's
  const std::vector<bool>* left_out = nullptr;  ///< by element: nothing is measured there and 0 given
};

/// The budget of its replicate number `replicate` alone.
Budget of_one_replicate(Budget budget, int replicate);

/// Called now and then with the share that is done, 0..1, from any thread, one call at a time.
using Progress = std::function<void(double share)>;

const std::string& name_of(const Sensor& sensor);
/// Elements side by side and one above the other.
struct SensorShape {
  int columns = 1, rows = 1;
};
SensorShape shape_of(const Sensor& sensor);
/// Which surfaces there are for that sensor.
std::uint32_t mask_of(const Sensor& sensor);

/// Takes what one element and replicate read; called from several threads at once, but for an element always
/// from one.
using TakeRows = std::function<void(std::size_t element, int replicate, std::span<const Rgb> rows,
                                    std::span<const Rgb> unshadowed)>;
/// Measures and hands on what comes, so that nothing needs to be held twice. What is left out is not handed
/// on.
RefusedSamples measure_each(const Scene& scene, const Sensor& sensor, const Budget& budget,
                            const TakeRows& take, const Progress& progress = {});

Measurement measure(const Scene& scene, const Sensor& sensor, const Budget& budget,
                    const Progress& progress = {});

}  // namespace fillside
