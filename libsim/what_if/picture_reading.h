// A picture measured to a wanted precision, by rows, with the noise that is left.
#pragma once

#include <optional>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/transport/measurement.h"
#include "libsim/what_if/audit.h"
#include "libsim/what_if/effort.h"

namespace fillside {

struct PictureReading {
  Measurement measurement;     ///< one replicate: the mean of all passes, rows kept
  double reached_stops = 0.0;  ///< 95 % half width of the middle pixel's luminance
  bool reached = true;
  std::uint64_t samples_per_pixel = 0;
  std::optional<Audit> audit;  ///< of the cached mode; nothing when every sample was walked to its end
};

/// Passes with independent numbers are added until the middle pixel's 95 % half width is within the effort's
/// precision (or its seconds are used up).
PictureReading take_picture(const Scene& scene, const Camera& camera, const Effort& effort,
                            const EffortProgress& progress = {});

}  // namespace fillside
