// Illuminance on a plane by a luminance given over the upper half of the directions, which may have a cusp.
#pragma once

#include <functional>

#include "libsim/base/space.h"

namespace fillside {

/// Integral of luminance(d) max(0, d . normal) over the directions d above the horizon. `to_cusp` is where
/// the luminance has its peak (a CIE sky's has a corner there, at which quadrature in other coordinates loses
/// its accuracy): rings are drawn around it, and cut where they cross the horizon and the plane.
double illuminance_from_upper_half(const Direction& normal, const Direction& to_cusp,
                                   const std::function<double(const Direction&)>& luminance);

}  // namespace fillside
