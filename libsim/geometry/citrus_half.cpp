// Half a citrus fruit, cut side up: pored rind, pith, segments.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/citrus_wheel.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr double kWheel = 0.945;  ///< radius of what lies within the rind
constexpr double kRecess = 0.14;  ///< how deep it lies, of the radius

/// A half ball, settled on a small flat, with a recess for the wheel.
Profile rind_section(double r, double h) {
  constexpr int kSteps = 40;
  Profile profile{{0.0, 0.0}};
  for (int i = 3; i <= kSteps; ++i) {
    const double t = 0.5 * kPi * i / kSteps;
    const double height_m = h * (1.0 - std::cos(t)) - h * (1.0 - std::cos(0.5 * kPi * 3.0 / kSteps));
    profile.push_back({r * std::sin(t), height_m, smooth_step(0.02 * h, 0.12 * h, height_m)});
  }
  const double top_m = profile.back().height_m;
  profile.back().relief = 0.0;
  profile.push_back({0.985 * r, top_m + 0.015 * r});
  profile.push_back({0.955 * r, top_m + 0.015 * r});
  profile.push_back({kWheel * r + 0.005 * r, top_m});
  profile.push_back({kWheel * r + 0.005 * r, top_m - kRecess * r});
  profile.push_back({0.0, top_m - kRecess * r});
  return profile;
}

}  // namespace

Item citrus_half_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = 1.06 * r;
  const Plan plan{.segments = 160};
  const Profile section = rind_section(r, h);
  const double top_m = section[section.size() - 3].height_m;
  const double relief_m = std::min(size.relief_m, 0.04 * r);
  Mesh rind = turned(section, plan);
  move_along_normals(rind, [&, before = rind.corners](std::size_t i) {
    const double pore = 1.0 - smooth_step(0.1, 0.5, cell_noise(before[i] / (0.07 * r), seed).nearest);
    const double share = section[profile_index_of(i, plan)].relief;
    return share * relief_m * (0.35 * bumps(before[i], 0.5 * r, seed) - 0.65 * pore);
  });
  const double foot_m = top_m - (kRecess - 0.006) * r;
  const double thickness_m = top_m + 0.012 * r - foot_m;
  CitrusWheel wheel = citrus_wheel(
      {kWheel * r - 0.006 * r, thickness_m, std::min(relief_m, 0.2 * thickness_m), 10, 14}, mixed(seed, 5));
  const Placement lifted(Eigen::Translation3d(0.0, 0.0, foot_m));
  Item item;
  add_part(item, "body", rind);
  add_part(item, "filling", moved(wheel.flesh, lifted));
  add_part(item, "pith", moved(wheel.pith, lifted));
  return item;
}

}  // namespace fillside
