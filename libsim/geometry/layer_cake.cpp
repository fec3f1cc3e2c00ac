// A whole layer cake: three sponges, cream between them and on top.
#include <array>

#include "libsim/base/sample_numbers.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kLayers = 3;

Profile disc(double r, double low, double high, double rounding, double relief, double longest_m) {
  const double flat_r = r - 2.0 * rounding;  // the flats are one piece up to here
  const std::array corners{ProfileCorner{0.0, low},
                           ProfileCorner{flat_r, low},
                           ProfileCorner{r, low, rounding, relief},
                           ProfileCorner{r, high, rounding, relief},
                           ProfileCorner{flat_r, high},
                           ProfileCorner{0.0, high}};
  Profile profile = rounded(corners, longest_m);
  // Bumps belong to the side: the flats stay level, so that layers cannot reach into each other.
  for (ProfilePoint& point : profile)
    if (point.radius_m < r) point.relief = 0.0;
  return profile;
}

}  // namespace

Item layer_cake_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m;
  const double sponge_m = 0.25 * size.height_m, cream_m = size.height_m / kLayers - sponge_m;
  // 0.2 mm for 10 cm lies between cream and the sponge above and below it.
  const double gap = 0.002 * size.height_m;
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .segments = 176};
  Item item{{{"body", {}}, {"filling", {}}}};
  for (int layer = 0; layer < kLayers; ++layer) {
    const double low = layer * size.height_m / kLayers, top = low + sponge_m;
    const Profile side = disc(r, low, top, 0.12 * sponge_m, 1.0, 0.11 * sponge_m);
    Mesh sponge = turned(side, plan);
    move_along_normals(sponge, [&, before = sponge.corners](std::size_t i) {
      const double share = side[profile_index_of(i, plan)].relief;
      return 0.5 * size.relief_m * share *
             bumps(before[i], 0.08 * r, mixed(seed, static_cast<std::uint64_t>(layer)));
    });
    append(item.parts[0].mesh, sponge);
    const bool icing = layer == kLayers - 1;
    const double end = top + cream_m - (icing ? 0.0 : gap);
    append(item.parts[1].mesh, turned(disc(0.985 * r, top + gap, end, 0.45 * cream_m, 0.0, 1.0), plan));
  }
  return item;
}

}  // namespace fillside
