// Can the camera stand and focus there?
#pragma once

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/set_remarks.h"

namespace fillside {

/// A body that does not fit between lens and ceiling or wall, something right before the lens, a close-up
/// that an ordinary lens does not reach; and a camera so high that someone may climb after it.
void remark_on_camera(const Description& description, const Scene& scene, SetRemarks& remarks);

}  // namespace fillside
