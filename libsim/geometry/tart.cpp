// A tart: fluted crust with a rim above a slightly domed filling; bare, or with slices of citrus.
#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/geometry/citrus_wheel.h"
#include "libsim/geometry/dealt.h"
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

/// Height of the filling above the tin's bottom, at a distance from the axis; see filling_section.
double filling_height_m(double radius_m, double r, double h) {
  const double share = std::min(1.0, radius_m / (0.8988 * r - r / 600.0));
  return 0.70 * h + 0.12 * h * std::pow(std::sqrt(1.0 - share * share), 1.5);
}

struct Slice {
  Eigen::Vector2d middle;
  double radius_m;
  Eigen::Vector2d rise = Eigen::Vector2d::Zero();  ///< how it leans: height gained for a way across
};

/// One flat in the middle and a ring around it, clear of the crust. In the ring each leans on the next: all
/// rise along the ring by the same slope, so at a place where two overlap, at distance d from the axis, one
/// lies 2 d sin(half the angle between them) x slope higher. They overlap from d = 0.37 r on: 0.027 r, more
/// than a slice is thick.
std::vector<Slice> slices_on(double r, std::uint64_t seed) {
  constexpr int kRound = 8;
  constexpr double kSlope = 0.095;
  std::vector<Slice> slices{{Eigen::Vector2d::Zero(), 0.25 * r}};
  const double first = 2.0 * kPi * dealt(seed, 50);
  for (int i = 0; i < kRound; ++i) {
    const double angle = first + 2.0 * kPi * i / kRound;
    const Eigen::Vector2d outward(std::cos(angle), std::sin(angle)), onward(-outward.y(), outward.x());
    slices.push_back({0.56 * r * outward, 0.26 * r, kSlope * onward});
  }
  return slices;
}

/// Lays a flat piece, its foot at z = 0, over the curve of the filling, its lower edge on it.
Mesh draped(Mesh piece, const Slice& slice, double turn, double r, double h) {
  const double gap_m = r / 500.0;
  for (Point& corner : piece.corners) {
    const Eigen::Vector2d across = Eigen::Rotation2Dd(turn) * corner.head<2>(), place = slice.middle + across;
    const double lift_m = slice.rise.norm() * slice.radius_m + slice.rise.dot(across);
    corner = {place.x(), place.y(), corner.z() + gap_m + lift_m + filling_height_m(place.norm(), r, h)};
  }
  return piece;
}

void add_slice(Item& item, const Slice& slice, double r, double h, const ItemSize& size, std::uint64_t seed) {
  const double thick_m = 0.020 * r, turn = 2.0 * kPi * dealt(seed, 60);
  const double relief_m = std::min(size.relief_m, 0.2 * thick_m);
  const double rind_m = 0.045 * slice.radius_m, in_m = slice.radius_m - rind_m;
  const CitrusWheel wheel = citrus_wheel({in_m - slice.radius_m / 200.0, thick_m, relief_m, 9, 5}, seed);
  const Profile ring{{in_m, 0.0},
                     {slice.radius_m - 0.3 * rind_m, 0.0},
                     {slice.radius_m, 0.3 * thick_m},
                     {slice.radius_m, 0.8 * thick_m},
                     {slice.radius_m - 0.3 * rind_m, 1.02 * thick_m},
                     {in_m, 1.02 * thick_m}};
  add_part(item, "flesh", draped(wheel.flesh, slice, turn, r, h));
  add_part(item, "pith", draped(wheel.pith, slice, turn, r, h));
  add_part(item, "rind", draped(turned_ring(ring, Plan{.segments = 72}), slice, turn, r, h));
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

Item citrus_tart_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = 0.125 * size.width_m;
  Item item = tart_form(size, seed);
  Item topping;
  std::uint64_t each = 0;
  for (const Slice& slice : slices_on(r, seed))
    add_slice(topping, slice, r, h, size, mixed(seed, 70 + each++));
  for (ItemPart& part : topping.parts) {
    for (Point& corner : part.mesh.corners) corner.y() *= size.depth_m / size.width_m;
    item.parts.push_back(std::move(part));
  }
  item.stand_m = 0.0;
  return item;
}

}  // namespace fillside
