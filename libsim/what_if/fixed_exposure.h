// One exposure for several pictures: metered once, then left alone, as one does to see what a change does.
#pragma once

#include <string>

#include "libsim/scene/description.h"
#include "libsim/sensor/camera.h"
#include "libsim/view/exposure.h"
#include "libsim/view/picture.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {

struct FixedExposure {
  Illuminance metered;  ///< as if by a flat disc: what the development starts from
  Settings settings;    ///< with what close focus costs
  Rgb white_balance = grey(1.0);
};

/// The exposure of a set that has been read; light reaches its dish.
FixedExposure fixed_exposure(const Description& description, const Camera& camera, const SetReading& set,
                             Stops brighter = stops(0.0));

/// The picture, developed at that exposure, whatever the light in it.
Picture developed_at(const FixedExposure& exposure, const Measurement& picture);

}  // namespace fillside
