// Every window and lamp that the camera sees mirrored in something shiny: how much of it, and how bright.
#pragma once

#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/view/glare.h"
#include "libsim/what_if/effort.h"

namespace fillside {

struct GlareReading {
  std::vector<Glare> glares;  ///< those that cover most of the frame with most light first
  /// For the overlay: of each pixel of the camera the luminance that windows and lamps add by a mirroring,
  /// and a quarter of what the thing there shows without it on average; 0 where nothing is mirrored.
  std::vector<double> added_cd_m2, least_cd_m2;
};

/// Where the image lies comes from the exact mirror directions, what it adds from the same rays' light; what
/// is there otherwise from what the camera measures along them, less that. `light_factor` is an anchor's.
/// Images that cover less than a hundredth of their thing and a five-thousandth of the frame are left out.
GlareReading read_glare(const Scene& scene, const Camera& camera, const Effort& effort,
                        double light_factor = 1.0);

}  // namespace fillside
