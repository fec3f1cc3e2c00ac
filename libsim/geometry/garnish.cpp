// What floats on a soup: croutons and a few leaves. Stands on the soup's surface, so put it `on` a bowl.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/leaf.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/scatter.h"

namespace fillside {
namespace {

constexpr int kPieces = 12, kLeaves = 3;

/// A toasted cube of bread, holes in its faces, one corner low.
Mesh crouton(double half_m, double relief_m, std::uint64_t seed) {
  const Eigen::Vector3d half = half_m * Eigen::Vector3d(dealt(seed, 1, 0.85, 1.0), dealt(seed, 2, 0.85, 1.0),
                                                        dealt(seed, 3, 0.7, 0.9));
  Mesh cube = lump({half, 6.0, 56, 32});
  move_along_normals(cube, [&, before = cube.corners](std::size_t i) {
    const double hole = 1.0 - smooth_step(0.1, 0.55, cell_noise(before[i] / (0.42 * half_m), seed).nearest);
    return -relief_m * (0.7 * hole + 0.15 * (1.0 - bumps(before[i], 0.3 * half_m, seed)));
  });
  const Placement turn(Eigen::AngleAxisd(2.0 * kPi * dealt(seed, 4), Direction::UnitZ()) *
                       Eigen::AngleAxisd(dealt(seed, 5, -0.35, 0.35), Direction::UnitX()));
  return moved(cube, turn);
}

}  // namespace

Item garnish_form(const ItemSize& size, std::uint64_t seed) {
  const double half_m = 0.062 * size.width_m, reach_m = 0.5 * size.width_m - 1.5 * half_m;
  const double relief_m = std::min(size.relief_m, 0.2 * half_m);
  Item item;
  int placed = 0;
  for (const Eigen::Vector2d& at : scattered(kPieces, reach_m, 3.0 * half_m, seed)) {
    const std::uint64_t own = mixed(seed, 20U + static_cast<std::uint64_t>(placed));
    const bool is_leaf = placed++ < kLeaves;
    const double length_m = 2.8 * half_m;
    Mesh piece =
        is_leaf
            ? moved(leaf({length_m, 0.55 * length_m, 0.02 * half_m, 0.3 * relief_m, 0.12, 0.12, 32, 16}, own),
                    Eigen::AngleAxisd(2.0 * kPi * dealt(own, 9), Direction::UnitZ()) *
                        Placement(Eigen::Translation3d(-0.5 * length_m, 0.0, 0.0)))
            : crouton(half_m, relief_m, own);
    const double lift_m = -bounds_of(piece).low.z();
    add_part(item, is_leaf ? "leaves" : "body",
             moved(piece, Placement(Eigen::Translation3d(at.x(), at.y(), lift_m))));
  }
  return item;
}

}  // namespace fillside
