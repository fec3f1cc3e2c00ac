// A heap of blueberries, each with its little crown, as they fall.
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/heap.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kBerries = 44, kRings = 20, kSegments = 28;

/// Within the unit ball: slightly flat, at the top a star-shaped crown around a dent.
Mesh berry() {
  constexpr double kFlat = 0.88, kCrown = 0.42, kDent = 0.24;
  Profile profile;
  for (int i = 0; i <= kRings; ++i) {
    const double t = std::pow(static_cast<double>(i) / kRings, 0.8) * kPi;  // finer rings at the crown
    const double from_top = kPi - t;
    const double radius = i == 0 || i == kRings ? 0.0 : std::sin(t);
    const double dent = kDent * (1.0 - smooth_step(0.45 * kCrown, kCrown, from_top));
    const double rim = 0.10 * std::exp(-std::pow((from_top - 1.05 * kCrown) / 0.10, 2.0));
    profile.push_back({radius * (1.0 - 0.3 * rim), kFlat * (-std::cos(t) - dent + 0.6 * rim)});
  }
  Mesh mesh = turned(profile, Plan{.segments = kSegments});
  for (Point& corner : mesh.corners) {
    const double star = 0.5 + 0.5 * std::cos(5.0 * std::atan2(corner.y(), corner.x()));
    const double off = corner.head<2>().norm();
    if (corner.z() > 0.0) corner.z() -= 0.06 * (1.0 - star) * std::exp(-std::pow((off - kCrown) / 0.1, 2.0));
  }
  return mesh;
}

}  // namespace

Item berries_form(const ItemSize& size, std::uint64_t seed) {
  std::vector<double> radii_m;
  for (std::uint64_t i = 0; i < kBerries; ++i) radii_m.push_back(size.width_m * dealt(seed, i, 0.064, 0.082));
  const double gap_m = 0.0015 * size.width_m;
  const double relief_m = std::min(size.relief_m, 0.01 * size.width_m);
  Item item;
  std::uint64_t each = 0;
  for (const Sphere& place : heap_of(radii_m, 0.5 * size.width_m, gap_m, seed)) {
    const std::uint64_t own = mixed(seed, 1000 + each++);
    Mesh skin = berry();
    const Eigen::Quaterniond turn = tumbled(own);
    for (Point& corner : skin.corners) {  // bumps go inward only, so that no berry reaches its neighbour
      const double dent_m = 0.5 * relief_m * (1.0 - bumps(corner, 0.7, own));
      corner = place.centre + turn * (corner * (place.radius_m - dent_m));
    }
    add_part(item, "body", skin);
  }
  return item;
}

}  // namespace fillside
