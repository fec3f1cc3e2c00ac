// An open glass with a real wall, so that a dielectric can bend light at both of its faces.
#include <array>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"

namespace fillside {
namespace {

constexpr double kFoot = 0.84;  ///< the foot's radius, of the rim's

struct TumblerMeasures {
  double r, h, wall, bottom;
};

Profile glass_section(const TumblerMeasures& m) {
  const std::array corners{ProfileCorner{0.0, 0.0},
                           ProfileCorner{kFoot * m.r, 0.0, 0.06 * m.r},
                           ProfileCorner{m.r, m.h, m.wall},
                           ProfileCorner{m.r - m.wall, m.h, m.wall},
                           ProfileCorner{kFoot * m.r - m.wall, m.bottom, 0.14 * m.r},
                           ProfileCorner{0.0, m.bottom}};
  return rounded(corners);
}

Profile inner_wall(const TumblerMeasures& m, double gap) {
  const std::array corners{ProfileCorner{0.0, m.bottom + gap},
                           ProfileCorner{kFoot * m.r - m.wall - gap, m.bottom + gap, 0.14 * m.r},
                           ProfileCorner{m.r - m.wall - gap, m.h}};
  return rounded(corners);
}

}  // namespace

Item tumbler_form(const ItemSize& size, std::uint64_t) {
  const double h = size.width_m * 12.0 / 7.0;
  const TumblerMeasures m{.r = 0.5 * size.width_m, .h = h, .wall = 0.036 * size.width_m, .bottom = 0.07 * h};
  const double gap = size.width_m / 350.0;  // 0.2 mm for 7 cm
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .segments = 256};
  Item item{{{"glass", turned(glass_section(m), plan)}}, m.bottom};
  const double level_m = m.bottom + size.level * (0.97 * m.h - m.bottom);
  if (level_m <= m.bottom + 2.0 * gap) return item;
  item.parts.push_back({"filling", turned(filled_to(inner_wall(m, gap), level_m), plan)});
  item.stand_m = level_m;
  return item;
}

}  // namespace fillside
