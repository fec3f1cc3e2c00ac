// Safety remarks that fit a set; short, and deferring to the makers' instructions and local codes.
#pragma once

#include <string>

#include "libsim/scene/description.h"

namespace fillside::tools {

/// One line each, empty when there is nothing to say.
std::string cautions_for(const Description& description);

}  // namespace fillside::tools
