// Does light arrive, does the sun fall on something that throws or gathers it, and where does a window
// mirror?
#pragma once

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/set_remarks.h"

namespace fillside {

/// No light at the dish, or less than 1 lx in any direction.
void remark_on_darkness(const Description& description, const Scene& scene, const Effort& effort,
                        SetRemarks& remarks);

/// Mirrors, foil, bare metal and glass that the sun reaches.
void caution_on_sun(const Description& description, const Scene& scene, SetRemarks& remarks);

/// Windows and lamps mirrored over a fifth or more of a liquid's or glass's face that takes a fiftieth of the
/// frame, so that they show; with a move that loses them.
void remark_on_mirror_images(const Description& description, const Scene& scene, const Effort& effort,
                             SetRemarks& remarks);

}  // namespace fillside
