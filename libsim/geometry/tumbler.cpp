// An open glass with a real wall, so that a dielectric can bend light at both of its faces.
#include "libsim/geometry/tumbler.h"

#include <array>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"

namespace fillside {
namespace {

constexpr double kFoot = 0.84;  ///< the foot's radius, of the rim's

Profile glass_section(const TumblerMeasures& m) {
  const std::array corners{ProfileCorner{0.0, 0.0},
                           ProfileCorner{kFoot * m.r, 0.0, 0.06 * m.r},
                           ProfileCorner{m.r, m.h, m.wall},
                           ProfileCorner{m.r - m.wall, m.h, m.wall},
                           ProfileCorner{kFoot * m.r - m.wall, m.bottom, 0.14 * m.r},
                           ProfileCorner{0.0, m.bottom}};
  return rounded(corners);
}

Profile inner_wall(const TumblerMeasures& m) {
  const double gap = m.gap;
  const std::array corners{ProfileCorner{0.0, m.bottom + gap},
                           ProfileCorner{kFoot * m.r - m.wall - gap, m.bottom + gap, 0.14 * m.r},
                           ProfileCorner{m.r - m.wall - gap, m.h}};
  return rounded(corners);
}

}  // namespace

TumblerMeasures tumbler_measures(double width_m) {
  const double h = width_m * 12.0 / 7.0;
  return {.r = 0.5 * width_m, .h = h, .wall = 0.036 * width_m, .bottom = 0.07 * h, .gap = width_m / 350.0};
}

double TumblerMeasures::inner_radius_at(double height_m) const {
  const double share = (height_m - bottom) / (h - bottom);
  return kFoot * r + share * (1.0 - kFoot) * r - wall;
}

double TumblerMeasures::level_m(double level) const { return bottom + level * (0.97 * h - bottom); }

Item tumbler_form(const ItemSize& size, std::uint64_t) {
  const TumblerMeasures m = tumbler_measures(size.width_m);
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .segments = 256};
  Item item{{{"glass", turned(glass_section(m), plan)}}, m.bottom};
  const double level_m = m.level_m(size.level);
  if (level_m <= m.bottom + 2.0 * m.gap) return item;
  item.parts.push_back({"filling", turned(filled_to(inner_wall(m), level_m), plan)});
  item.stand_m = level_m;
  return item;
}

}  // namespace fillside
