// A filled tumbler with ice. What shows of a cube stands on the surface; the rest is left out, as the drink
// hides it.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/scatter.h"
#include "libsim/geometry/tumbler.h"

namespace fillside {
namespace {

/// The top of a cube that melts: a rounded square on z = 0, its upper face not level.
Mesh cube_top(double half_m, double high_m, double relief_m, std::uint64_t seed) {
  constexpr int kRows = 10, kRings = 14;
  Profile profile{{0.0, 0.0}, {0.9 * half_m, 0.0}};
  const double rounding_m = 0.35 * half_m;
  for (int i = 0; i <= kRows; ++i)
    profile.push_back(
        {half_m * (0.96 + 0.04 * i / kRows), (high_m - rounding_m) * i / kRows, i > 0 ? 1.0 : 0.0});
  for (int i = 1; i <= kRings; ++i) {
    const double t = 0.5 * kPi * i / kRings;
    profile.push_back(
        {half_m - rounding_m * (1.0 - std::cos(t)), high_m - rounding_m * (1.0 - std::sin(t)), 1.0});
  }
  for (int i = kRings - 1; i >= 0; --i) profile.push_back({(half_m - rounding_m) * i / kRings, high_m, 1.0});
  const Plan plan{.squareness = 4.5, .segments = 56};
  Mesh mesh = turned(profile, plan);
  const double tilt = dealt(seed, 1, -0.3, 0.3) / half_m, melt = dealt(seed, 2, 0.05, 0.22);
  for (Point& corner : mesh.corners) {
    const double off = corner.head<2>().squaredNorm() / (half_m * half_m);
    corner.z() *= 0.78 + 0.6 * tilt * corner.x() - melt * (1.0 - off) * 0.5;  // the middle sinks as it melts
  }
  move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {
    return -0.5 * relief_m * profile[profile_index_of(i, plan)].relief *
           (1.0 - bumps(before[i], 0.7 * half_m, seed));
  });
  return moved(mesh, Placement(Eigen::AngleAxisd(2.0 * kPi * dealt(seed, 3), Direction::UnitZ())));
}

}  // namespace

Item iced_tumbler_form(const ItemSize& size, std::uint64_t seed) {
  Item item = tumbler_form(size, seed);
  const TumblerMeasures m = tumbler_measures(size.width_m);
  if (item.parts.size() < 2) return item;  // no drink, no ice
  const double level_m = m.level_m(size.level), inner_m = m.inner_radius_at(level_m) - m.gap;
  const double half_m = 0.36 * inner_m, round_m = 1.27 * half_m;  // the farthest of a rounded square's rim
  const double high_m = std::min(1.1 * half_m, 0.9 * (m.h - level_m) + 0.3 * half_m);
  const double relief_m = std::min(size.relief_m, 0.1 * high_m);
  std::uint64_t each = 0;
  const double first = 2.0 * kPi * dealt(seed, 30);
  for (int i = 0; i < 3; ++i) {
    const double angle = first + 2.0 * kPi * i / 3.0;
    const Point foot((inner_m - round_m) * std::cos(angle), (inner_m - round_m) * std::sin(angle),
                     level_m + m.gap);
    Mesh cube =
        moved(cube_top(half_m, high_m, relief_m, mixed(seed, each++)), Placement(Eigen::Translation3d(foot)));
    for (Point& corner : cube.corners) corner.y() *= size.depth_m / size.width_m;
    add_part(item, "ice", cube);
    item.stand_m = std::max(item.stand_m, bounds_of(cube).high.z());
  }
  return item;
}

}  // namespace fillside
