// A second surface on a part, as flour lies on a crust: printed there, from none to all of it.
#pragma once

#include <vector>

#include "libsim/geometry/mesh.h"
#include "libsim/scene/print.h"

namespace fillside {

/// From `first` where a corner's share is 0 to `second` where it is 1. The colours are held as a picture's
/// are, to an eighth-bit code each.
Print second_print(const Mesh& mesh, const std::vector<double>& share_at_corner, const Rgb& first,
                   const Rgb& second);

}  // namespace fillside
