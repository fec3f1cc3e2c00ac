// A tart: fluted crust with a rim above a slightly domed filling.
#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kFlutes = 40;  ///< a multiple of 4: a crest at each end of both axes
constexpr int kSegments = 8 * kFlutes;

/// Draws crust and filling in between the crests, all corners at one place by the same amount, so that the
/// filling keeps its distance to the crust. The draw fades toward the middle slower than the radius shrinks:
/// nothing folds.
void flute(Mesh& mesh, double r, double depth_ratio) {
  for (Point& corner : mesh.corners) {
    const double y = corner.y() / depth_ratio;
    const double radius = std::hypot(corner.x(), y);
    if (radius <= 0.0) continue;
    const double in_m = 0.011 * r * (1.0 - std::cos(kFlutes * std::atan2(y, corner.x()))) *
                        smooth_step(0.72 * r, 0.88 * r, radius);
    const double factor = (radius - in_m) / radius;
    corner.x() *= factor;
    corner.y() *= factor;
  }
}

/// Outside and rim bear the bumps; the inner wall stays smooth next to the filling.
Profile crust_section(double r, double h) {
  const std::array corners{
      ProfileCorner{0.0, 0.0},
      ProfileCorner{0.91 * r, 0.0, 0.02 * r},
      ProfileCorner{r, h, 0.028 * r, 1.0},
      ProfileCorner{0.935 * r, h, 0.028 * r, 1.0},
      ProfileCorner{0.90 * r, 0.72 * h},
      ProfileCorner{0.87 * r, 0.22 * h, 0.02 * r},
      ProfileCorner{0.0, 0.22 * h},
  };
  return rounded(corners, 0.02 * r);
}

/// 0.2 mm (for 24 cm) off the crust all round; its edge meets the crust at 0.70 h, its middle rises to 0.82
/// h.
Profile filling_section(double r, double h) {
  const double gap = r / 600.0;
  const std::array under{ProfileCorner{0.0, 0.22 * h + gap},
                         ProfileCorner{0.868 * r - gap, 0.22 * h + gap, 0.02 * r},
                         ProfileCorner{0.8988 * r - gap, 0.70 * h}};
  Profile profile = rounded(under);
  constexpr int kSteps = 16;
  const double edge = profile.back().radius_m;
  for (int i = 1; i <= kSteps; ++i) {
    const double t =
        static_cast<double>(i) / kSteps;  // steep at the edge like a set custard, flat in the middle
    profile.push_back(
        {edge * std::cos(0.5 * kPi * t), 0.70 * h + 0.12 * h * std::pow(std::sin(0.5 * kPi * t), 1.5)});
  }
  profile.back().radius_m = 0.0;
  return profile;
}

}  // namespace

Item tart_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = 0.125 * size.width_m;  // usual: 3 cm for 24 cm
  const Plan plan{.depth_ratio = size.depth_m / size.width_m, .segments = kSegments};
  const Profile section = crust_section(r, h);
  Mesh crust = turned(section, plan), filling = turned(filling_section(r, h), plan);
  flute(crust, r, plan.depth_ratio);
  flute(filling, r, plan.depth_ratio);
  // Half the bumps' height goes inward; the shell is 0.065 r thick, so they cannot reach through it.
  const double relief_m = std::min(size.relief_m, 0.04 * r);
  move_along_normals(crust, [&, before = crust.corners](std::size_t i) {
    return 0.5 * relief_m * section[profile_index_of(i, plan)].relief * bumps(before[i], 0.08 * r, seed);
  });
  return {{{"body", std::move(crust)}, {"filling", std::move(filling)}}, 0.82 * h};
}

}  // namespace fillside
