// A jar with a screw lid. Its glass is one closed surface, to be given a thin clear pane: wall and bottom of
// the jar are thin against everything else in the set.
#include "libsim/geometry/jar.h"

#include <array>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"

namespace fillside {
namespace {

constexpr double kNeck = 0.86;       ///< of the radius
constexpr double kGlassTop = 0.965;  ///< of the height

/// The contents' wall: the glass moved in by `inset`, square to each of its faces.
Profile contents_wall(double r, double h, double inset) {
  const double shoulder = 0.5 * inset;  // corners of a bevel move in by less along the wall
  const std::array corners{ProfileCorner{0.0, inset}, ProfileCorner{r - inset, inset, 0.12 * r},
                           ProfileCorner{r - inset, 0.74 * h - shoulder, 0.2 * r},
                           ProfileCorner{kNeck * r - inset, 0.84 * h - shoulder, 0.08 * r},
                           ProfileCorner{kNeck * r - inset, kGlassTop * h - inset}};
  return rounded(corners);
}

}  // namespace

Profile jar_glass_section(double r, double h) {
  const std::array corners{ProfileCorner{0.0, 0.0},
                           ProfileCorner{r, 0.0, 0.14 * r},
                           ProfileCorner{r, 0.74 * h, 0.2 * r},
                           ProfileCorner{kNeck * r, 0.84 * h, 0.08 * r},
                           ProfileCorner{kNeck * r, kGlassTop * h, 0.03 * r},
                           ProfileCorner{0.0, kGlassTop * h}};
  return rounded(corners);
}

Profile jar_wall_section(double r, double h, double wall) {
  const double shoulder = 0.5 * wall;
  const std::array corners{ProfileCorner{0.0, 0.0},
                           ProfileCorner{r, 0.0, 0.14 * r},
                           ProfileCorner{r, 0.74 * h, 0.2 * r},
                           ProfileCorner{kNeck * r, 0.84 * h, 0.08 * r},
                           ProfileCorner{kNeck * r, kGlassTop * h, 0.4 * wall},
                           ProfileCorner{kNeck * r - wall, kGlassTop * h, 0.4 * wall},
                           ProfileCorner{kNeck * r - wall, 0.84 * h - shoulder, 0.08 * r},
                           ProfileCorner{r - wall, 0.74 * h - shoulder, 0.2 * r},
                           ProfileCorner{r - wall, wall, 0.12 * r},
                           ProfileCorner{0.0, wall}};
  return rounded(corners);
}

Profile jar_lid_section(double r, double h, double gap) {
  const double under = kGlassTop * h + gap, skirt = 0.87 * h, outer = 0.94 * r;
  const std::array corners{ProfileCorner{0.0, under},
                           ProfileCorner{kNeck * r + gap, under},
                           ProfileCorner{kNeck * r + gap, skirt, 0.01 * r},
                           ProfileCorner{outer, skirt, 0.01 * r},
                           ProfileCorner{outer, h, 0.05 * r},
                           ProfileCorner{0.0, h}};
  return rounded(corners);
}

Item jar_form(const ItemSize& size, std::uint64_t) {
  const double r = 0.5 * size.width_m, h = size.width_m * 9.0 / 7.0;
  const double inset =
      size.width_m * 3.0 / 70.0;  // 3 mm in a jar of 7 cm: the glass's wall and a little brine
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .segments = 256};
  Item item{{{"glass", turned(jar_glass_section(r, h), plan)}}};
  const Profile held =
      filled_to(contents_wall(r, h, inset), inset + size.level * (kGlassTop * h - 2.0 * inset));
  if (!held.empty()) item.parts.push_back({"filling", turned(held, plan)});
  item.parts.push_back({"lid", turned(jar_lid_section(r, h, 0.006 * r), plan)});
  return item;
}

}  // namespace fillside
