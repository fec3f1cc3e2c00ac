// Does something stand in the key's way to the dish: a board, the camera, or whoever works it?
#pragma once

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/what_if/set_remarks.h"

namespace fillside {

/// Shares of the key window or lamp that a camera and a standing person hide from the dish's empty place.
struct OperatorShade {
  double camera = 0.0, person = 0.0;
};
/// The camera as a ball 16 cm through, 6 cm behind the lens; the person as a column 45 cm wide and 1.7 m
/// tall, 45 cm behind the camera, or 60 cm from the dish at its clock position when the camera looks down.
/// Common practice; people and cameras differ. The set must have an emitter.
OperatorShade operator_shade(const Description& description, const Scene& scene, const Camera& camera);

void remark_on_shading(const Description& description, const Scene& scene, SetRemarks& remarks);

}  // namespace fillside
