// Is in the picture what should be, and nothing else?
#pragma once

#include <optional>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/sensor/camera.h"
#include "libsim/what_if/set_remarks.h"

namespace fillside {

/// Boards, diffusers and lamps that the camera sees, with how far to pull them back; food that it does not
/// see. A sheet that reaches right across the frame, or bears a picture, is taken for a backdrop.
void remark_on_picture(const Description& description, const Scene& scene, SetRemarks& remarks);

/// How far an object must be moved straight away from the dish, over the table, until no part of it lies in
/// the frame, whatever stands before it; at most 3 m, else nothing.
std::optional<double> way_out_of_frame_m(const Scene& scene, std::uint16_t object, const Camera& camera);

}  // namespace fillside
