// A bowl on a low foot, with a wall, a rounded lip and perhaps something in it.
#include <cmath>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"

namespace fillside {
namespace {

constexpr int kWallSteps = 40;

struct BowlMeasures {
  double r;     ///< outer radius
  double h;     ///< usual height: 6 cm for 15 cm
  double wall;  ///< thickness
  double foot_r, foot_h;
  double bottom;  ///< height of the inside
  double lip;     ///< height at which the wall stands upright and the lip's half circle starts
  double gap;     ///< between wall and contents: 0.2 mm for 15 cm, wider than the two tessellations stray
};

BowlMeasures measures_of(double width_m) {
  BowlMeasures m{};
  m.r = 0.5 * width_m;
  m.h = 0.4 * width_m;
  m.wall = 0.027 * width_m;
  m.foot_r = 0.36 * m.r;
  m.foot_h = 0.06 * m.h;
  m.bottom = m.foot_h + m.wall;
  m.lip = m.h - 0.5 * m.wall;
  m.gap = width_m / 750.0;
  return m;
}

/// A quarter ellipse from (start, low) to the upright at (radius, lip).
Profile quarter(double start, double radius, double low, double lip) {
  Profile curve;
  for (int i = 0; i <= kWallSteps; ++i) {
    const double t = 0.5 * kPi * i / kWallSteps;
    curve.push_back({start + (radius - start) * std::sin(t), low + (lip - low) * (1.0 - std::cos(t))});
  }
  return curve;
}

Profile section(const BowlMeasures& m) {
  Profile profile{{0.0, 0.0}, {m.foot_r, 0.0}};
  const Profile outside = quarter(m.foot_r, m.r, m.foot_h, m.lip);
  profile.insert(profile.end(), outside.begin(), outside.end());
  constexpr int kLipSteps = 10;
  for (int i = 1; i < kLipSteps; ++i) {
    const double t = kPi * i / kLipSteps;
    profile.push_back({m.r - 0.5 * m.wall * (1.0 - std::cos(t)), m.lip + 0.5 * m.wall * std::sin(t)});
  }
  const Profile inside = quarter(0.0, m.r - m.wall, m.bottom, m.lip);
  profile.insert(profile.end(), inside.rbegin(), inside.rend());
  return profile;
}

}  // namespace

Item bowl_form(const ItemSize& size, std::uint64_t) {
  const BowlMeasures m = measures_of(size.width_m);
  const Plan plan{.depth_ratio = size.depth_m / size.width_m};
  Item item{{{"body", turned(section(m), plan)}}, m.bottom};
  const double full_m = m.lip - 0.02 * m.h;
  const double level_m = m.bottom + size.level * (full_m - m.bottom);
  if (level_m <= m.bottom + 2.0 * m.gap) return item;
  const Profile held = filled_to(quarter(0.0, m.r - m.wall - m.gap, m.bottom + m.gap, m.lip), level_m);
  item.parts.push_back({"filling", turned(held, plan)});
  item.stand_m = level_m;  // a garnish floats
  return item;
}

}  // namespace fillside
