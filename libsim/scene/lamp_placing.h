// Where a lamp stands or hangs, how it is turned, and how brightly it shines.
#pragma once

#include "libsim/light/lamp.h"
#include "libsim/scene/placing.h"

namespace fillside {

LampShape place_lamp(const LampSection& lamp, const RoomPlace& room);

/// Of the shining face. The section must say one strength, as lamp_check makes sure; black if it says none.
Rgb radiance_of(const LampSection& lamp, const LampShape& shape);

}  // namespace fillside
