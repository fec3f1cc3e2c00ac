// What concerns the dish as a whole: how the light falls off over it, and how much of it lies in the sun.
#pragma once

#include "libsim/base/estimate.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/effort.h"

namespace fillside {

/// Stops between the lightest and darkest of level meters over the dish's empty place: its middle and eight
/// places on the oval round the subject's foot, half its height up. Not a number where one has no light.
Estimate falloff_over_dish(const Scene& scene, const Effort& effort);

/// Share of the places in the dish's empty place that the sun's middle reaches straight, 0..1: through glass
/// and the straight share of cloth. 0 where no sun shines.
double sunlit_share_of_dish(const Scene& scene);

}  // namespace fillside
