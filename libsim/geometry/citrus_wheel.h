// What a cut citrus fruit shows: segments of flesh between pale membranes, a ring of pith, the rind.
#pragma once

#include <cstdint>

#include "libsim/geometry/mesh.h"

namespace fillside {

struct WheelShape {
  double radius_m;     ///< of the whole wheel, pith included, without rind
  double thickness_m;  ///< from the foot at z = 0 to the top of the membranes
  double relief_m;     ///< how far the flesh swells between membranes, and its grain; <= 0.2 thickness
  int segments = 10;
  int steps = 12;  ///< mesh steps across each segment
};

struct CitrusWheel {
  Mesh flesh, pith;  ///< closed, apart by 1/200 of the radius
};

/// Lies flat, centred on the axis. The swollen flesh stays below thickness_m + 0.5 relief_m.
CitrusWheel citrus_wheel(const WheelShape& shape, std::uint64_t seed);

}  // namespace fillside
