// A layer cake with a slice taken out: three sponges with an open crumb, cream between, cream on top and
// around, dollops along the edge.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kLayers = 3;
constexpr int kRound = 160, kAcross = 48;  ///< mesh steps along the outside and along each cut
constexpr double kHalfOpening = 24.0 * kDegree;
/// The slice is missing toward the camera's right; the outline is drawn around a point on the far side of the
/// middle, from where all of it is in sight.
constexpr double kOpensToward = -50.0 * kDegree;
constexpr double kCentreBehind = 0.35;

/// The cake seen from above, of unit radius.
Outline cut_disc() {
  Outline outline;
  const auto add = [&](double x, double y) { outline.emplace_back(x + kCentreBehind, y); };
  const double c = std::cos(kHalfOpening), s = std::sin(kHalfOpening);
  for (int i = 0; i < kAcross; ++i) {
    const double out = static_cast<double>(i) / kAcross;
    add(out * c, out * s);
  }
  for (int i = 0; i < kRound; ++i) {
    const double angle = kHalfOpening + (2.0 * kPi - 2.0 * kHalfOpening) * i / kRound;
    add(std::cos(angle), std::sin(angle));
  }
  for (int i = kAcross; i > 0; --i) {
    const double out = static_cast<double>(i) / kAcross;
    add(out * c, -out * s);
  }
  return outline;
}

/// From the outline's own centre back to the cake's, and turned.
void set_in_place(Mesh& mesh, double r) {
  const Placement back = Eigen::AngleAxisd(kOpensToward, Direction::UnitZ()) *
                         Placement(Eigen::Translation3d(-kCentreBehind * r, 0.0, 0.0));
  for (Point& corner : mesh.corners) corner = back * corner;
}

/// Open crumb: small holes and a slow unevenness, all inward.
double crumb(const Point& place, double r, std::uint64_t seed) {
  const double hole = 1.0 - smooth_step(0.15, 0.5, cell_noise(place / (0.035 * r), seed).nearest);
  return -0.55 * hole - 0.25 * (1.0 - bumps(place, 0.03 * r, seed)) * 0.5;
}

void add_layer(Item& item, std::string_view role, const Profile& side, double r, double relief_m,
               std::uint64_t seed) {
  const Outline outline = cut_disc();
  Mesh mesh = turned_along(outline, side);
  const Plan counted{.segments = static_cast<int>(outline.size())};
  if (relief_m > 0.0)
    move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {
      return side[profile_index_of(i, counted)].relief * relief_m * crumb(before[i], r, seed);
    });
  set_in_place(mesh, r);
  add_part(item, role, mesh);
}

/// A piped kiss of cream with its foot at z = 0.
Mesh dollop(double r, double h, std::uint64_t seed) {
  constexpr int kRows = 14, kRidges = 7;
  Profile profile{{0.0, 0.0}};
  for (int i = 0; i <= kRows; ++i) {
    const double t = static_cast<double>(i) / kRows;
    profile.push_back({r * std::pow(1.0 - t, 0.62) * (1.0 + 0.35 * t) + 0.01 * r, h * t});
  }
  profile.push_back({0.0, 1.01 * h});
  Mesh mesh = turned(profile, Plan{.segments = 8 * kRidges});
  const double twist = dealt(seed, 0, 1.6, 2.4), first = 2.0 * kPi * dealt(seed, 1);
  for (Point& corner : mesh.corners) {
    const double turn = twist * corner.z() / h;
    const double angle = std::atan2(corner.y(), corner.x());
    const double ridge = 1.0 - 0.10 * (1.0 + std::cos(kRidges * angle));
    corner.head<2>() = Eigen::Rotation2Dd(first + turn) * Eigen::Vector2d(ridge * corner.head<2>());
  }
  return mesh;
}

void add_dollops(Item& item, double r, double top_m, double h, std::uint64_t seed) {
  constexpr int kDollops = 10;
  for (int i = 0; i < kDollops; ++i) {
    const double angle =
        kOpensToward + kHalfOpening + (2.0 * kPi - 2.0 * kHalfOpening) * (i + 0.5) / kDollops;
    const Mesh kiss = dollop(0.105 * r, h, mixed(seed, 100U + static_cast<std::uint64_t>(i)));
    add_part(item, "filling",
             moved(kiss, Placement(Eigen::Translation3d(0.82 * r * std::cos(angle),
                                                        0.82 * r * std::sin(angle), top_m))));
  }
}

}  // namespace

Item cut_cake_form(const ItemSize& size, std::uint64_t seed) {
  const double r = 0.5 * size.width_m, h = size.height_m;
  const double gap_m = 0.002 * h, kiss_m = 0.16 * h, cream_m = 0.075 * h;
  const double sponge_m = (h - kiss_m) / kLayers - cream_m;
  // Holes reach no deeper than what the cream hides.
  const double relief_m = std::min(size.relief_m, 0.03 * r);
  Item item;
  double low_m = 0.0;
  for (int layer = 0; layer < kLayers; ++layer) {
    const double top_m = low_m + sponge_m;
    add_layer(item, "body", drum(r, low_m, top_m, 0.08 * sponge_m, 14), r, relief_m,
              mixed(seed, static_cast<std::uint64_t>(layer)));
    const bool icing = layer == kLayers - 1;
    add_layer(item, "filling",
              drum(icing ? 1.006 * r : 0.99 * r, top_m + gap_m, top_m + cream_m - gap_m, 0.45 * cream_m, 5),
              r, 0.2 * relief_m, mixed(seed, 40U + static_cast<std::uint64_t>(layer)));
    low_m = top_m + cream_m;
  }
  add_dollops(item, r, low_m, kiss_m, seed);
  return item;
}

}  // namespace fillside
