// Does everything stand on something?
#pragma once

#include <optional>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/set_remarks.h"

namespace fillside {

/// Food, props and meshes that hang in the air. Boards and cloths may hang: there are stands and clamps.
void remark_on_standing(const Description& description, const Scene& scene, SetRemarks& remarks);

/// The least way that an object's lowest places must fall until one of them meets something else, to 1 mm of
/// height; nothing when they meet nothing.
std::optional<double> drop_m(const Scene& scene, std::uint16_t object);

}  // namespace fillside
