// What a set's picture takes for white.
#pragma once

#include <string>

#include "libsim/base/colour.h"
#include "libsim/scene/description.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {

struct White {
  Rgb light = grey(1.0);  ///< of luminance 1
  std::string text;       ///< "5500 K", "a grey card at \"dish up\"", "daylight of 6504 K"
};

/// The camera's `white` or `grey_card`, else D65, which shows all light as it is.
White white_of(const Description& description, const SetReading& set);

}  // namespace fillside
