// A tall jar with gherkins packed upright in it, close to the glass but for the light between them, a sprig
// of dill and mustard seed.
#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/jar.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/strand.h"

namespace fillside {
namespace {

constexpr int kRound = 8;

/// Room inside the glass, and how the gherkins share it: eight in a ring, almost touching, and one in the
/// middle.
struct Inside {
  double radius_m, floor_m, height_m;  ///< the height is that of the whole jar
  std::uint64_t seed;

  double gherkin_m() const { return 0.262 * radius_m; }
  double ring_m() const { return 0.72 * radius_m; }
  double angle(double place) const { return 2.0 * kPi * (place + dealt(seed, 99)) / kRound; }
  /// A place on the inner wall between two gherkins, `off_m` from the glass.
  Point between(int gap, double off_m, double z_m) const {
    const double a = angle(gap + 0.5), out_m = radius_m - off_m;
    return {out_m * std::cos(a), out_m * std::sin(a), z_m};
  }
};

struct Gherkin {
  Mesh mesh;
  std::vector<double> pale;
};

/// How pale the skin is, 0..1: in broken stripes along it, at its tip, and on its warts.
double paleness(const Point& p, const Point& half, std::uint64_t seed) {
  const double angle = std::atan2(p.y(), p.x()), along = p.z() / half.z();
  const double wander = bumps(p, 0.9 * half.x(), mixed(seed, 21));
  const double stripe =
      std::cos(8.0 * angle + 1.6 * wander) + 0.8 * bumps(p, 0.5 * half.x(), mixed(seed, 22));
  return std::clamp(0.75 * smooth_step(0.1, 1.3, stripe + 0.8 * along) + 0.25 * (0.5 + 0.5 * wander), 0.0,
                    1.0);
}

/// Standing on z = 0, a little crooked, with warts.
Gherkin gherkin(double radius_m, double half_length_m, double relief_m, std::uint64_t seed) {
  const Point half(radius_m, radius_m, half_length_m);
  Gherkin made{lump({half, 2.5, 44, 48}), {}};
  for (const Point& corner : made.mesh.corners) made.pale.push_back(paleness(corner, half, seed));
  move_along_normals(made.mesh, [&, before = made.mesh.corners](std::size_t i) {
    const Point place = before[i] / (0.42 * radius_m);
    const double wart = 1.0 - smooth_step(0.05, 0.4, cell_noise(place, seed).nearest);
    return relief_m * (0.6 * wart - 0.6 - 0.4 * (0.5 + 0.5 * bumps(before[i], 0.8 * radius_m, seed)));
  });
  const double turn = 2.0 * kPi * dealt(seed, 1), bend_m = dealt(seed, 2, 0.01, 0.05) * radius_m;
  for (Point& corner : made.mesh.corners) {
    const double along = corner.z() / half_length_m;
    const double slim = 0.95 - 0.07 * along * dealt(seed, 3);
    corner.x() = corner.x() * slim + bend_m * (1.0 - 2.0 * along * along);
    corner.y() *= slim;
    corner.z() += half_length_m;
  }
  made.mesh = moved(std::move(made.mesh), Placement(Eigen::AngleAxisd(turn, Direction::UnitZ())));
  return made;
}

void add_gherkins(Item& item, const Inside& jar, int count, double relief_m) {
  for (int i = 0; i < count; ++i) {
    const std::uint64_t own = mixed(jar.seed, static_cast<std::uint64_t>(i));
    const bool middle = i == kRound;
    const double out_m = middle ? 0.0 : jar.ring_m(),
                 radius_m = middle ? 0.40 * jar.radius_m : jar.gherkin_m();
    const double half_length_m = 0.5 * jar.height_m * dealt(own, 7, 0.58, 0.70);
    const Point foot(out_m * std::cos(jar.angle(i)), out_m * std::sin(jar.angle(i)), jar.floor_m);
    Gherkin one = gherkin(radius_m, half_length_m, relief_m, own);
    add_part(item, "filling", moved(std::move(one.mesh), Placement(Eigen::Translation3d(foot))),
             std::move(one.pale));
  }
}

/// Mustard seed, sunk to the floor in the gaps along the glass.
void add_seed(Item& item, const Inside& jar) {
  const double seed_m = 0.024 * jar.radius_m;
  for (int gap = 0; gap < kRound; ++gap)
    for (int k = 0; k < 3 + gap * 5 % 4; ++k) {
      const std::uint64_t own =
          mixed(mixed(jar.seed, 50U + static_cast<std::uint64_t>(gap)), static_cast<std::uint64_t>(k));
      const double z_m = jar.floor_m + 0.05 * jar.radius_m + seed_m * (1.0 + 2.06 * k);
      Point place = jar.between(gap, seed_m * dealt(own, 1, 2.1, 2.7), z_m);
      const Mesh grain = lump({Point::Constant(seed_m), 2.0, 8, 6});
      add_part(item, "spice", moved(grain, Placement(Eigen::Translation3d(place))));
    }
}

/// A stalk of dill in one of the gaps, with short fronds that do not quite meet it.
void add_dill(Item& item, const Inside& jar, int gap) {
  constexpr int kWhorls = 22, kFronds = 4;
  const double stalk_m = 0.011 * jar.radius_m, frond_m = 0.0055 * jar.radius_m, off_m = 0.075 * jar.radius_m;
  const double low_m = 0.22 * jar.height_m, high_m = 0.68 * jar.height_m;
  const auto middle = [&](double share) { return jar.between(gap, off_m, low_m + share * (high_m - low_m)); };
  std::vector<StrandPoint> stalk;
  for (int i = 0; i <= 8; ++i) stalk.push_back({middle(i / 8.0), stalk_m * (1.0 - 0.5 * i / 8.0)});
  add_part(item, "leaves", strand(stalk, 6));
  for (int whorl = 0; whorl < kWhorls; ++whorl)
    for (int k = 0; k < kFronds; ++k) {
      const std::uint64_t own =
          mixed(mixed(jar.seed, 70U + static_cast<std::uint64_t>(whorl)), static_cast<std::uint64_t>(k));
      const double angle = 2.0 * kPi * (k + 0.5 * (whorl % 2)) / kFronds;
      const Direction out(std::cos(angle), std::sin(angle), 0.0);
      const double reach_m = jar.radius_m * dealt(own, 1, 0.035, 0.055);
      const Point root = middle((whorl + 0.5) / kWhorls) + (stalk_m + 2.2 * frond_m) * out;
      const double rise_m = 0.9 * reach_m;
      const std::array<StrandPoint, 3> line{
          StrandPoint{root, frond_m},
          StrandPoint{root + 0.6 * (reach_m - stalk_m) * out + Point(0, 0, 0.4 * rise_m), frond_m},
          StrandPoint{root + (reach_m - stalk_m) * out + Point(0, 0, rise_m), 0.6 * frond_m}};
      add_part(item, "leaves", strand(line, 4));
    }
}

}  // namespace

Item pickle_jar_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = size.width_m * 16.0 / 9.0;
  const double wall_m = 0.045 * r, gap_m = 0.012 * r;
  const Inside jar{r - wall_m - gap_m, wall_m + gap_m, h, seed};
  const double relief_m = std::min(size.relief_m, 0.2 * jar.gherkin_m());
  Item item;
  // Cut fine: a full jar is a lens, and its facets would tear what is seen through it into strips.
  add_part(item, "glass", turned(jar_wall_section(r, h, wall_m), Plan{.segments = 448}));
  const int count = static_cast<int>(std::lround(size.level * (kRound + 1)));
  add_gherkins(item, jar, count, relief_m);
  if (count > kRound) {
    add_seed(item, jar);
    add_dill(item, jar, 1);
    add_dill(item, jar, 5);
  }
  add_part(item, "lid", turned(jar_lid_section(r, h, 0.006 * r), Plan{.segments = 192}));
  return item;
}

}  // namespace fillside
