// A wedge of cheese in its rind, with round holes in the cut faces.
#include <algorithm>
#include <cmath>
#include <vector>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/round_shapes.h"
#include "libsim/geometry/scatter.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr double kHalfAngle = 24.0 * kDegree;
constexpr int kAlong = 110, kArc = 36, kRows = 56;
constexpr double kCentre = 0.62;  ///< from the point of the wedge, in radii: all of the outline is in sight
constexpr double kRind = 0.022;   ///< its thickness, in radii

/// Seen from above, of radius 1, around its centre.
Outline wedge() {
  Outline outline;
  const double c = std::cos(kHalfAngle), s = std::sin(kHalfAngle);
  const auto add = [&](double x, double y) { outline.emplace_back(x - kCentre, y); };
  for (int i = 0; i < kAlong; ++i) add(c * i / kAlong, -s * i / kAlong);
  for (int i = 0; i < kArc; ++i) {
    const double angle = kHalfAngle * (2.0 * i / kArc - 1.0);
    add(std::cos(angle), std::sin(angle));
  }
  for (int i = kAlong; i > 0; --i) add(c * i / kAlong, s * i / kAlong);
  return outline;
}

/// On both cut faces, from the wedge's centre; sized so that they stay clear of edges and of each other.
std::vector<Sphere> holes_in(double r, double low_m, double high_m, std::uint64_t seed) {
  constexpr int kHoles = 7;
  std::vector<Sphere> holes;
  for (const double side : {-1.0, 1.0}) {
    const std::uint64_t own = mixed(seed, side > 0.0 ? 1 : 2);
    const auto places = scattered(kHoles, 1.0, 0.45, own);
    for (std::size_t i = 0; i < places.size(); ++i) {
      const double radius_m = (high_m - low_m) * dealt(own, 900 + i, 0.06, 0.14);
      const double out_m = r * (0.56 + 0.36 * places[i].x());
      const double height_m =
          0.5 * (low_m + high_m) + places[i].y() * (0.5 * (high_m - low_m) - 1.3 * radius_m);
      holes.push_back(
          {Point(out_m * std::cos(kHalfAngle) - kCentre * r, side * out_m * std::sin(kHalfAngle), height_m),
           radius_m});
    }
  }
  return holes;
}

/// Depth of the holes at a place of a cut face: deep bowls with a soft edge.
double hole_depth_m(const Point& place, const std::vector<Sphere>& holes) {
  double depth_m = 0.0;
  for (const Sphere& hole : holes) {
    const double off = (place - hole.centre).norm() / hole.radius_m;
    if (off < 1.0) depth_m = std::max(depth_m, 0.85 * hole.radius_m * std::sqrt(1.0 - off * off));
  }
  return depth_m;
}

/// The rind on the round side, clear of the paste and of the rinds above and below.
Mesh outer_rind(double r, double h, double gap_m) {
  constexpr int kHigh = 24;
  const auto at = [&](int column, int row, double radius_m) {
    const double angle = kHalfAngle * (2.0 * column / kArc - 1.0), t = static_cast<double>(row) / kHigh;
    const double edge = std::pow(std::abs(2.0 * t - 1.0), 8.0);
    const double out_m = radius_m > r + 1.5 * gap_m ? radius_m - 0.5 * edge * kRind * r : radius_m;
    return Point(out_m * std::cos(angle) - kCentre * r, out_m * std::sin(angle), h * t);
  };
  return slab({kArc, kHigh, [&](int i, int j) { return at(i, j, r + gap_m + kRind * r); },
               [&](int i, int j) { return at(i, j, r + gap_m); }});
}

}  // namespace

Item cheese_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.97 * size.width_m, h = 0.5 * size.width_m;
  const double gap_m = 0.002 * r, low_m = kRind * r + gap_m, high_m = h - low_m;
  const Outline outline = wedge();
  const Plan counted{.segments = static_cast<int>(outline.size())};
  const Profile side = drum(r, low_m, high_m, 0.004 * r, kRows);
  const std::vector<Sphere> holes = holes_in(r, low_m, high_m, seed);
  const double relief_m = std::min(size.relief_m, 0.02 * r);
  Mesh paste = turned_along(outline, side);
  move_along_normals(paste, [&, before = paste.corners](std::size_t i) {
    const double share = side[profile_index_of(i, counted)].relief;
    const double rough_m = 0.5 * relief_m * (1.0 - bumps(before[i], 0.05 * r, seed));
    return -share * (rough_m + hole_depth_m(before[i], holes));
  });
  Item item;
  add_part(item, "body", paste);
  add_part(item, "rind", turned_along(outline, drum(r, 0.0, kRind * r, 0.01 * r, 8)));
  add_part(item, "rind", turned_along(outline, drum(r, h - kRind * r, h, 0.01 * r, 8)));
  add_part(item, "rind", outer_rind(r, h, gap_m));
  return item;
}

}  // namespace fillside
