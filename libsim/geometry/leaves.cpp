// A sprig seen from above: broad leaves in a ring, small ones standing in the middle.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/leaf.h"

namespace fillside {
namespace {

struct Whorl {
  int leaves;
  double length, width;  ///< of the sprig's half width
  double start, height;  ///< of the base from the axis and the table
  double rise;           ///< of the blade from the level, radians
  double cup, arch;
};

/// From below up; the steeper the higher, so that no whorl meets the one below.
constexpr Whorl kWhorls[] = {
    {5, 0.90, 0.43, 0.09, 0.04, 0.06, 0.10, 0.06},
    {4, 0.60, 0.36, 0.06, 0.16, 0.50, 0.22, 0.05},
    {3, 0.32, 0.15, 0.075, 0.30, 0.90, 0.18, 0.03},
};

}  // namespace

Item leaves_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m;
  Item item;
  std::uint64_t each = 0;
  double first = 0.0;
  for (const Whorl& whorl : kWhorls) {
    first += 0.6;
    for (int i = 0; i < whorl.leaves; ++i) {
      const std::uint64_t own = mixed(seed, each++);
      const double length_m = whorl.length * r * dealt(own, 5, 0.88, 1.0);
      const LeafShape shape{length_m,  whorl.width * length_m / whorl.length,
                            0.004 * r, std::min(size.relief_m, 0.03 * length_m),
                            whorl.cup, whorl.arch};
      const double angle = first + 2.0 * kPi * (i + dealt(own, 6, -0.04, 0.04)) / whorl.leaves;
      const Placement place = Eigen::AngleAxisd(angle, Direction::UnitZ()) *
                              Placement(Eigen::Translation3d(whorl.start * r, 0.0, whorl.height * r)) *
                              Eigen::AngleAxisd(-whorl.rise, Direction::UnitY());
      add_part(item, "body", moved(leaf(shape, own), place));
    }
  }
  return item;
}

}  // namespace fillside
