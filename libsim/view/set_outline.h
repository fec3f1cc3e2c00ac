// The set seen from above, to draw into maps of level planes.
#pragma once

#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/view/map.h"

namespace fillside {

/// Windows, boards, diffusers, food, props and the camera, each as an outline in table coordinates.
std::vector<MapOutline> outlines_from_above(const Description& description, const Scene& scene);

}  // namespace fillside
