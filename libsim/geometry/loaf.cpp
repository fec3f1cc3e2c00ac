// A free-standing oval loaf: domed crust with bumps and slashes across the top.
#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/base/sample_numbers.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kRings = 96;
constexpr int kSlashes = 4;

/// Nearly flat below, a full dome above; the belly is widest at 0.38 of the height.
Profile section(double r, double h) {
  constexpr double kBelly = 0.38, kBelowPower = 5.0, kAbovePower = 2.2;
  Profile profile;
  for (int i = 0; i <= kRings; ++i) {
    const double t = kPi * i / kRings - 0.5 * kPi;
    const double c = i == 0 || i == kRings ? 0.0 : std::cos(t), s = std::sin(t);
    const double power = t < 0.0 ? kBelowPower : kAbovePower;
    const double reach = std::pow(std::pow(c, power) + std::pow(std::abs(s), power), -1.0 / power);
    const double height_m = h * (kBelly + (t < 0.0 ? kBelly : 1.0 - kBelly) * reach * s);
    profile.push_back({r * reach * c, height_m, smooth_step(0.03 * h, 0.15 * h, height_m)});
  }
  return profile;
}

struct Slash {
  double along_m;  ///< where it crosses the loaf's long axis
  double slope;    ///< x gained per y
};

std::array<Slash, kSlashes> slashes(double width_m, std::uint64_t seed) {
  std::array<Slash, kSlashes> cuts{};
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const double jitter = value_noise({0.5 + static_cast<double>(i) * 3.0, 0.5, 0.5}, mixed(seed, 7));
    cuts[i].along_m = width_m * (0.19 * (static_cast<double>(i) - 1.5) + 0.02 * jitter);
    cuts[i].slope = 0.55 + 0.12 * jitter;
  }
  return cuts;
}

/// Depth 0..1 of the cuts at a place on the crust: round grooves on the upper half, running out to the sides.
double cut_depth(const Point& place, const ItemSize& size, const std::array<Slash, kSlashes>& cuts) {
  const double groove_m = 0.017 * size.width_m;
  double depth = 0.0;
  for (const Slash& cut : cuts) {
    const double off_m = (place.x() - cut.along_m - cut.slope * place.y()) / std::hypot(1.0, cut.slope);
    depth = std::max(depth, std::exp(-(off_m / groove_m) * (off_m / groove_m)));
  }
  const double across = std::abs(place.y()) / (0.5 * size.depth_m);
  return depth * smooth_step(0.45 * size.height_m, 0.7 * size.height_m, place.z()) *
         (1.0 - smooth_step(0.5, 0.8, across));
}

}  // namespace

Item loaf_form(const ItemSize& size, std::uint64_t seed) {
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .squareness = 2.3, .segments = 288};
  const Profile profile = section(0.5 * size.width_m, size.height_m);
  Mesh crust = turned(profile, plan);
  const auto cuts = slashes(size.width_m, seed);
  const double slash_m = std::min(3.0 * size.relief_m, 0.12 * size.height_m);  // no relief, no slashes
  move_along_normals(crust, [&, before = crust.corners](std::size_t i) {
    const double out_m = 0.5 * size.relief_m * bumps(before[i], 0.04 * size.width_m, seed);
    return profile[profile_index_of(i, plan)].relief * out_m - slash_m * cut_depth(before[i], size, cuts);
  });
  return {{{"body", std::move(crust)}}};
}

}  // namespace fillside
