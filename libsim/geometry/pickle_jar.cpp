// A tall jar with gherkins standing in it, close to the glass but for the light between them.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/jar.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

/// Standing on z = 0, a little crooked, with warts.
Mesh gherkin(double radius_m, double half_length_m, double relief_m, std::uint64_t seed) {
  Mesh mesh = lump({{radius_m, radius_m, half_length_m}, 2.5, 40, 44});
  move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {
    const Point place = before[i] / (0.42 * radius_m);
    const double wart = 1.0 - smooth_step(0.05, 0.4, cell_noise(place, seed).nearest);
    return relief_m * (0.6 * wart - 0.6 - 0.4 * (0.5 + 0.5 * bumps(before[i], 0.8 * radius_m, seed)));
  });
  const double turn = 2.0 * kPi * dealt(seed, 1), bend_m = dealt(seed, 2, 0.01, 0.04) * radius_m;
  for (Point& corner : mesh.corners) {
    const double along = corner.z() / half_length_m;
    const double slim = 0.96 - 0.07 * along * dealt(seed, 3);
    corner.x() = corner.x() * slim + bend_m * (1.0 - 2.0 * along * along);
    corner.y() *= slim;
    corner.z() += half_length_m;
  }
  return moved(mesh, Placement(Eigen::AngleAxisd(turn, Direction::UnitZ())));
}

}  // namespace

Item pickle_jar_form(const ItemSize& size, std::uint64_t seed) {
  constexpr int kRound = 6;
  const double r = 0.5 * size.width_m, h = size.width_m * 16.0 / 9.0;
  const double inset_m = 0.06 * r;
  const double inner_m = r - inset_m, gherkin_m = 0.315 * inner_m;
  const double relief_m = std::min(size.relief_m, 0.2 * gherkin_m);
  Item item;
  add_part(item, "glass", turned(jar_glass_section(r, h), Plan{.segments = 192}));
  const int count = static_cast<int>(std::lround(size.level * (kRound + 1)));
  for (int i = 0; i < count; ++i) {
    const std::uint64_t own = mixed(seed, static_cast<std::uint64_t>(i));
    const double angle = 2.0 * kPi * (i + dealt(seed, 99)) / kRound,
                 out_m = i == kRound ? 0.0 : 0.655 * inner_m;
    const double half_length_m = 0.5 * h * dealt(own, 7, 0.54, 0.69);
    const Point foot(out_m * std::cos(angle), out_m * std::sin(angle), 1.6 * inset_m);
    add_part(item, "filling",
             moved(gherkin(gherkin_m, half_length_m, relief_m, own), Placement(Eigen::Translation3d(foot))));
  }
  add_part(item, "lid", turned(jar_lid_section(r, h, 0.006 * r), Plan{.segments = 192}));
  return item;
}

}  // namespace fillside
