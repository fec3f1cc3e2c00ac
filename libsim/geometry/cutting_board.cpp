// A wooden board with rounded corners, a juice groove and a grain to be felt.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

Profile section(double r, double h) {
  constexpr int kRings = 44;
  constexpr double kGrooveAt = 0.89, kGrooveHalf = 0.022;
  Profile profile{{0.0, 0.0}, {0.94 * r, 0.0}};
  const double rounding_m = std::min(0.3 * h, 0.04 * r);
  for (int i = 0; i <= 6; ++i) {
    const double t = 0.5 * kPi * i / 6.0;
    profile.push_back({r - rounding_m * (1.0 - std::sin(t)), rounding_m * (1.0 - std::cos(t))});
  }
  for (int i = 0; i <= 6; ++i) {
    const double t = 0.5 * kPi * i / 6.0;
    profile.push_back({r - rounding_m * (1.0 - std::cos(t)), h - rounding_m * (1.0 - std::sin(t))});
  }
  const double from = 1.0 - rounding_m / r;
  for (int i = 1; i < kRings; ++i) {
    const double out = from * std::pow(1.0 - static_cast<double>(i) / kRings, 0.8);
    const double off = (out - kGrooveAt) / kGrooveHalf;
    const double groove_m = std::abs(off) < 1.0 ? 0.22 * h * std::sqrt(1.0 - off * off) : 0.0;
    profile.push_back({out * r, h - groove_m, 1.0});
  }
  profile.push_back({0.0, h, 1.0});
  return profile;
}

}  // namespace

Item cutting_board_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = size.height_m;
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .squareness = 12.0, .segments = 320};
  const Profile profile = section(r, h);
  Mesh wood = turned(profile, plan);
  const double relief_m = std::min(size.relief_m, 0.15 * h);
  for (std::size_t i = 0; i < wood.corners.size(); ++i) {
    Point& corner = wood.corners[i];
    const Point stretched(corner.x() / (1.2 * r), corner.y() / (0.03 * r), 0.5);  // fibres along the board
    corner.z() -=
        0.5 * relief_m * profile[profile_index_of(i, plan)].relief * (1.0 - value_noise(stretched, seed));
  }
  return {{{"body", std::move(wood)}}};
}

}  // namespace fillside
