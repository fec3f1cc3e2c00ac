// A plate: foot ring, flat well, sloping rim.
#include <array>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"

namespace fillside {

Item plate_form(const ItemSize& size, std::uint64_t) {
  const double r = 0.5 * size.width_m;
  const double h = 0.185 * r;  // usual: 2.5 cm for 27 cm
  const double well_m = 0.28 * h;
  const std::array corners{
      ProfileCorner{0.0, 0.08 * h},                 // underside, held off the table by
      ProfileCorner{0.52 * r, 0.08 * h, 0.01 * r},  // the foot ring
      ProfileCorner{0.53 * r, 0.0, 0.006 * r},      //
      ProfileCorner{0.57 * r, 0.0, 0.008 * r},      //
      ProfileCorner{0.72 * r, 0.45 * h, 0.05 * r},  // shoulder from below
      ProfileCorner{r, 0.88 * h, 0.012 * r},        // rim's edge
      ProfileCorner{r, h, 0.012 * r},               //
      ProfileCorner{0.73 * r, 0.64 * h, 0.05 * r},  // shoulder from above
      ProfileCorner{0.63 * r, well_m, 0.09 * r},    // well
      ProfileCorner{0.0, well_m},
  };
  // The rim's edge is rounded below the top, and make_item stretches what is missing: a fraction of a
  // millimetre.
  Mesh mesh = turned(rounded(corners), {.depth_ratio = size.depth_m / size.width_m, .segments = 240});
  return {{{"body", std::move(mesh)}}, well_m};
}

}  // namespace fillside
