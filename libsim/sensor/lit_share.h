// How much of what the camera sees of a thing lies in a source's straight light: the lit part of the ball, as
// one draws it.
#pragma once

#include <cstdint>
#include <optional>

#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"

namespace fillside {

/// Share 0..1 of the thing's places in the frame that look to some part of the window or lamp with nothing
/// solid between; curtains and panes do not count as solid. Nothing when the camera does not see the thing.
/// By one ray through each of a grid of places, so a share of n places is off by some 1 / sqrt(n) at an
/// outline.
std::optional<double> lit_share(const Scene& scene, const Camera& camera, std::uint16_t object,
                                std::size_t emitter);

}  // namespace fillside
