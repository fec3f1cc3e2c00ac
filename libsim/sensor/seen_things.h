// What the camera sees of each thing, with what stands before it: by a ray through each of a grid of places
// of the frame.
#pragma once

#include <cstdint>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"

namespace fillside {

struct ThingInView {
  std::uint16_t object = 0;     ///< index into the scene's objects
  double share_of_frame = 0.0;  ///< 0..1, of what lies before everything else; through glass nothing is seen
  bool to_left = false, to_right = false, to_top = false, to_bottom = false;  ///< edges of the frame it meets
};

/// All objects that are seen, in the scene's order. Slivers narrower than a 360th of the frame may be missed.
std::vector<ThingInView> seen_things(const Scene& scene, const Camera& camera);

}  // namespace fillside
