// A free-standing loaf: domed, crackled crust, slashed across the top so that paler crumb shows in the cuts,
// and floury from the coils of the basket it rose in.
#include <algorithm>
#include <array>
#include <cmath>

#include "libsim/geometry/cell_noise.h"
#include "libsim/geometry/dealt.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"
#include "libsim/geometry/slab.h"

namespace fillside {
namespace {

constexpr int kAlong = 168, kAround = 144;
constexpr int kSlashes = 4;
constexpr double kBelly = 0.38;  ///< height of the widest place
constexpr double kBelowPower = 4.0, kAbovePower = 2.2, kEndPower = 2.5;

struct Slash {
  double along_m;  ///< where it crosses the loaf's long axis
  double slope;    ///< x gained per y
};

struct Loaf {
  ItemSize size;
  std::uint64_t seed;
  std::array<Slash, kSlashes> slashes;
  double slash_m, groove_m;  ///< depth and half width of a cut

  /// Size of the cross section at a place along the loaf, 0 at its ends.
  double girth(double x_m) const {
    const double along = std::min(1.0, std::abs(2.0 * x_m / size.width_m));
    return std::pow(1.0 - std::pow(along, kEndPower), 1.0 / kEndPower);
  }
  /// Height of the upper crust before it was cut.
  double dome_m(double x_m, double y_m) const {
    const double g = girth(x_m), across = std::min(1.0, std::abs(2.0 * y_m / size.depth_m) / g);
    return size.height_m *
           (kBelly + (1.0 - kBelly) * g * std::pow(1.0 - std::pow(across, kAbovePower), 1.0 / kAbovePower));
  }
  double off_m(const Slash& cut, const Point& p) const {
    return (p.x() - cut.along_m - cut.slope * p.y()) / std::hypot(1.0, cut.slope);
  }
  /// How far the crust lies lower at a place: a groove, and along one side of it a lifted ear.
  double cut_m(const Point& p) const;
  /// 0 to 1: where a cut has opened the crust.
  double opened(const Point& p) const;
};

/// Cuts run over the top and out toward the sides.
double run_out(const Loaf& loaf, const Point& p) {
  return (1.0 - smooth_step(0.45, 0.72, std::abs(2.0 * p.y() / loaf.size.depth_m))) *
         smooth_step(0.45, 0.62, p.z() / loaf.size.height_m);
}

double Loaf::cut_m(const Point& p) const {
  double down_m = 0.0;
  for (const Slash& cut : slashes) {
    const double off = off_m(cut, p) / groove_m;
    down_m += slash_m * std::exp(-std::pow(off, 4.0)) -
              0.35 * slash_m * std::exp(-std::pow((off - 1.35) / 0.45, 2.0));
  }
  return down_m * run_out(*this, p);
}

double Loaf::opened(const Point& p) const {
  double open = 0.0;
  for (const Slash& cut : slashes)
    open = std::max(open, 1.0 - smooth_step(0.75, 1.2, std::abs(off_m(cut, p)) / groove_m));
  return open * smooth_step(0.0, 0.3, run_out(*this, p));
}

Loaf scored(const ItemSize& size, std::uint64_t seed) {
  Loaf loaf{size, seed, {}, std::min(3.0 * size.relief_m, 0.12 * size.height_m), 0.021 * size.width_m};
  for (std::size_t i = 0; i < loaf.slashes.size(); ++i) {
    const double middle = static_cast<double>(i) - 0.5 * (kSlashes - 1);
    loaf.slashes[i] = {size.width_m * (0.165 * middle + dealt(seed, 2 * i, -0.012, 0.012)),
                       0.55 + dealt(seed, 2 * i + 1, -0.12, 0.12)};
  }
  return loaf;
}

/// Blisters and cracks of the crust, -1..1.
double crust_relief(const Point& p, const Loaf& loaf) {
  const double w = loaf.size.width_m;
  return 0.5 * bumps(p, 0.06 * w, loaf.seed) + 0.3 * bumps(p, 0.014 * w, mixed(loaf.seed, 5)) -
         0.5 * crack_depth(p, 0.055 * w, 0.010 * w, mixed(loaf.seed, 6)) + 0.15;
}

/// Flour that the basket left, 0..1: in the rings of its coils, thin where the dough stretched and cracked,
/// none in the cuts, which were made last.
double flour(const Point& p, const Loaf& loaf) {
  const double w = loaf.size.width_m;
  const double out = std::hypot(2.0 * p.x() / loaf.size.width_m, 1.2 * p.y() / loaf.size.depth_m);
  const double coil = std::cos(2.0 * kPi * (out / 0.125 + 0.25 * bumps(p, 0.12 * w, mixed(loaf.seed, 8))));
  const double patchy =
      0.9 * bumps(p, 0.09 * w, mixed(loaf.seed, 9)) + 0.7 * bumps(p, 0.012 * w, mixed(loaf.seed, 10));
  const double cracked = crack_depth(p, 0.055 * w, 0.010 * w, mixed(loaf.seed, 6));
  return 0.8 * smooth_step(-0.2, 1.6, coil + patchy) * (1.0 - 0.85 * cracked) * (1.0 - loaf.opened(p)) *
         smooth_step(0.2, 0.5, p.z() / loaf.size.height_m);
}

std::vector<double> flour_on(const Mesh& crust, const Loaf& loaf) {
  std::vector<double> flour_at_corner;
  for (const Point& corner : crust.corners) flour_at_corner.push_back(flour(corner, loaf));
  return flour_at_corner;
}

Mesh crust_of(const Loaf& loaf) {
  Profile unit;
  for (int i = 0; i <= kAlong; ++i) {
    const double t = kPi * i / kAlong;
    unit.push_back({i == 0 || i == kAlong ? 0.0 : 1.0, -std::cos(t)});
  }
  Mesh crust = turned(unit, Plan{.segments = kAround});
  for (Point& corner : crust.corners) {
    const double x_m = 0.5 * loaf.size.width_m * corner.z(), g = loaf.girth(x_m);
    const double angle = std::atan2(corner.y(), corner.x());
    const bool pole = corner.head<2>().norm() < 0.5;
    const double c = std::cos(angle), s = std::sin(angle), power = c < 0.0 ? kBelowPower : kAbovePower;
    const double reach =
        pole ? 0.0 : std::pow(std::pow(std::abs(s), power) + std::pow(std::abs(c), power), -1.0 / power);
    const double rise = c < 0.0 ? kBelly : 1.0 - kBelly;
    corner = {x_m, -0.5 * loaf.size.depth_m * g * reach * s,
              loaf.size.height_m * (kBelly + rise * g * reach * c)};
  }
  move_along_normals(crust, [&, before = crust.corners](std::size_t i) {
    const double off_table = smooth_step(0.03, 0.15, before[i].z() / loaf.size.height_m);
    return 0.5 * loaf.size.relief_m * off_table * (1.0 - loaf.opened(before[i])) *
           crust_relief(before[i], loaf);
  });
  for (Point& corner : crust.corners) corner.z() -= loaf.cut_m(corner);
  return crust;
}

/// The crumb that shows in a cut: a thin strip lying in the groove, clear of the crust.
Mesh strip_in(const Loaf& loaf, const Slash& cut) {
  constexpr int kLong = 56, kWide = 12;
  const double clear_m = 0.003 * loaf.size.width_m + 0.08 * loaf.slash_m, half_m = 0.66 * loaf.groove_m;
  const auto at = [&](int i, int j, double thick_m) {
    const double v = 1.0 - 2.0 * i / kLong, u = 2.0 * j / kWide - 1.0;
    const double y = 0.27 * loaf.size.depth_m * v;
    const double wide_m = half_m * std::sqrt(std::max(0.02, 1.0 - std::pow(std::abs(v), 3.0)));
    Point p(cut.along_m + cut.slope * y, y, 0.0);
    p += u * wide_m * Point(1.0, -cut.slope, 0.0) / std::hypot(1.0, cut.slope);
    p.z() = loaf.dome_m(p.x(), p.y());
    const double hole =
        1.0 - smooth_step(0.1, 0.5, cell_noise(p / (0.017 * loaf.size.width_m), loaf.seed).nearest);
    p.z() += clear_m + thick_m * (1.0 - 0.3 * hole) - loaf.cut_m(p);
    return p;
  };
  return slab({kLong, kWide, [&](int i, int j) { return at(i, j, 1.3 * clear_m); },
               [&](int i, int j) { return at(i, j, 0.0); }});
}

}  // namespace

Item loaf_form(const ItemSize& size, std::uint64_t seed) {
  const Loaf loaf = scored(size, seed);
  Item item;
  const Mesh crust = crust_of(loaf);
  add_part(item, "body", crust, flour_on(crust, loaf));
  if (loaf.slash_m > 0.0)
    for (const Slash& cut : loaf.slashes) add_part(item, "crumb", strip_in(loaf, cut));
  return item;
}

}  // namespace fillside
