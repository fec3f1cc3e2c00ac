// Three cracked cookies with chips of chocolate, one on the other and not quite in line.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/scatter.h"

namespace fillside {
namespace {

constexpr int kCookies = 3, kChips = 9;

struct CookieMeasures {
  double r, h, relief_m, chip_m;  ///< chip_m: half a chip's width
};

/// A flat foot, round sides, a low dome.
Profile section(const CookieMeasures& m) {
  constexpr int kSteps = 44;
  Profile profile{{0.0, 0.0}, {0.90 * m.r, 0.0}};
  for (int i = 0; i < kSteps; ++i) {
    const double t = 0.5 * kPi * i / kSteps;  // from the widest place to the top
    const double radius = m.r * std::pow(std::cos(t), 0.8);
    const double height_m = m.h * (0.35 + 0.65 * std::pow(std::sin(t), 0.75));
    profile.push_back({radius, height_m, smooth_step(0.35 * m.h, 0.6 * m.h, height_m)});
  }
  profile.push_back({0.0, m.h, 1.0});
  return profile;
}

/// Sockets for the chips, wider and deeper than the chips by one step of the mesh.
void carve(Mesh& cookie, const std::vector<Point>& chips, const CookieMeasures& m) {
  const double reach_m = m.chip_m + 0.024 * m.r, gap_m = 0.012 * m.r;
  for (Point& corner : cookie.corners)
    for (const Point& chip : chips) {
      const double off = (corner - chip).head<2>().norm() / reach_m;
      if (off < 1.0 && corner.z() > 0.4 * m.h)
        corner.z() = std::min(corner.z(), chip.z() - 0.8 * m.chip_m * std::sqrt(1.0 - off * off) - gap_m);
    }
}

void add_cookie(Item& item, const CookieMeasures& m, const Placement& place, std::uint64_t seed) {
  const Plan plan{.segments = 128};
  const Profile profile = section(m);
  Mesh cookie = turned(profile, plan);
  for (Point& corner : cookie.corners)  // dough spreads unevenly
    corner.head<2>() *=
        1.0 - 0.03 * (1.0 + value_noise(Point(corner.x(), corner.y(), 0.0) / m.r, mixed(seed, 3)));
  move_along_normals(cookie, [&, before = cookie.corners](std::size_t i) {
    const Point flat(before[i].x(), before[i].y(), 0.0);
    const Point wavy =
        flat + 0.06 * m.r * value_noise(flat / (0.15 * m.r), mixed(seed, 9)) * Point(1.0, 1.0, 0.0);
    const double crack = crack_depth(wavy, 0.42 * m.r, 0.09 * m.r, seed);
    const double share = profile[profile_index_of(i, plan)].relief;
    return -share * m.relief_m * (0.75 * crack + 0.125 * (1.0 - bumps(before[i], 0.09 * m.r, seed)));
  });
  std::vector<Point> chips;
  for (const Eigen::Vector2d& at : scattered(kChips, 0.66 * m.r, 2.6 * m.chip_m, mixed(seed, 17))) {
    const double dome = std::pow(1.0 - at.squaredNorm() / (m.r * m.r), 0.47);
    chips.emplace_back(at.x(), at.y(), m.h * (0.35 + 0.65 * dome) - 0.2 * m.chip_m);
  }
  carve(cookie, chips, m);
  add_part(item, "body", moved(cookie, place));
  for (const Point& chip : chips)
    add_part(item, "filling",
             moved(lump({{m.chip_m, m.chip_m, 0.8 * m.chip_m}, 2.4, 24, 12}),
                   place * Placement(Eigen::Translation3d(chip))));
}

}  // namespace

Item cookies_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.46 * size.width_m, h = 0.25 * r;
  const CookieMeasures m{r, h, std::min(size.relief_m, 0.35 * h), 0.075 * r};
  Item item;
  for (int i = 0; i < kCookies; ++i) {
    const std::uint64_t own = mixed(seed, static_cast<std::uint64_t>(i));
    const double angle = 2.0 * kPi * dealt(own, 0), off_m = i == 0 ? 0.0 : 0.07 * r;
    const double chips_m = 0.65 * m.chip_m;  // the next cookie lies on the chips
    const Point foot(off_m * std::cos(angle), off_m * std::sin(angle), i * (h + chips_m));
    add_cookie(item, m, Eigen::Translation3d(foot) * Eigen::AngleAxisd(angle, Direction::UnitZ()), own);
  }
  return item;
}

}  // namespace fillside
