#include "libsim/geometry/citrus_wheel.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/lump.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr double kFlesh = 0.89;      ///< radius of the flesh, of the wheel
constexpr double kCore = 0.07;       ///< radius of the pithy middle
constexpr double kMembrane = 0.013;  ///< half its width, of the wheel's radius

/// Where the membranes stand: evenly, give or take an eighth of a segment.
std::vector<double> membrane_angles(const WheelShape& shape, std::uint64_t seed) {
  std::vector<double> angles;
  for (int k = 0; k < shape.segments; ++k)
    angles.push_back(2.0 * kPi * (k + 0.25 * (dealt(seed, static_cast<std::uint64_t>(k)) - 0.5)) /
                     shape.segments);
  return angles;
}

Profile flesh_section(const WheelShape& shape) {
  const double edge_m = kFlesh * shape.radius_m, top_m = 0.9 * shape.thickness_m;
  Profile profile{{0.0, 0.0}, {0.97 * edge_m, 0.0}, {edge_m, 0.2 * top_m}, {edge_m, top_m}};
  const int rings = 2 * shape.steps;
  for (int i = 1; i <= rings; ++i)
    profile.push_back({edge_m * (1.0 - static_cast<double>(i) / rings), top_m, 1.0});
  return profile;
}

/// Distance across the top from the nearest membrane, the pith ring and the core, in wheel radii.
double off_membranes(const Eigen::Vector2d& place, const std::vector<double>& angles) {
  double off = std::min(kFlesh - place.norm(), place.norm() - kCore);
  for (const double angle : angles) {
    const Eigen::Vector2d along(std::cos(angle), std::sin(angle));
    if (place.dot(along) > 0.0)
      off = std::min(off, std::abs(along.x() * place.y() - along.y() * place.x()) - kMembrane);
  }
  return off;
}

/// Juice sacs: grains drawn out along the radius.
double grain(const Eigen::Vector2d& place, std::uint64_t seed) {
  const double angle = std::atan2(place.y(), place.x());
  return value_noise({6.0 * place.norm(), 9.0 * std::cos(angle), 9.0 * std::sin(angle)}, seed) +
         0.6 * value_noise({11.0 * place.norm(), 22.0 * std::cos(angle), 22.0 * std::sin(angle)},
                           mixed(seed, 1));
}

Mesh flesh_of(const WheelShape& shape, const std::vector<double>& angles, std::uint64_t seed) {
  const double top_m = 0.9 * shape.thickness_m;
  Mesh mesh = turned(flesh_section(shape), Plan{.segments = 4 * ((shape.segments * shape.steps + 3) / 4)});
  for (Point& corner : mesh.corners) {
    if (corner.z() < top_m) continue;
    const Eigen::Vector2d place = corner.head<2>() / shape.radius_m;
    const double swell = smooth_step(0.0, 0.09, off_membranes(place, angles));
    corner.z() += 0.1 * shape.thickness_m * (swell - 0.55) +
                  shape.relief_m * swell * (0.25 + 0.15 * grain(place, seed));
  }
  return mesh;
}

}  // namespace

CitrusWheel citrus_wheel(const WheelShape& shape, std::uint64_t seed) {
  const std::vector<double> angles = membrane_angles(shape, seed);
  const double r = shape.radius_m, top_m = shape.thickness_m, gap_m = r / 200.0;
  CitrusWheel wheel{flesh_of(shape, angles, seed), {}};
  const double inner_m = kFlesh * r + gap_m, rounding_m = 0.02 * r;
  const Profile ring{{inner_m, 0.0},
                     {r, 0.0},
                     {r, top_m - rounding_m},
                     {r - rounding_m, top_m},
                     {inner_m + rounding_m, top_m},
                     {inner_m, top_m - rounding_m}};
  wheel.pith = turned_ring(ring, Plan{.segments = 16 * shape.steps});
  const double foot_m = 0.86 * top_m + gap_m, half_m = 0.5 * (top_m - foot_m);
  Mesh core = lump({{kCore * r, kCore * r, half_m}, 3.0, 16, 6});
  append(wheel.pith, moved(core, Placement(Eigen::Translation3d(0.0, 0.0, foot_m + half_m))));
  const double from_m = (kCore + 0.01) * r, to_m = inner_m - 2.0 * gap_m;
  for (const double angle : angles) {
    const Mesh membrane = lump({{0.5 * (to_m - from_m), kMembrane * r, half_m}, 4.0, 8, 6});
    append(wheel.pith,
           moved(membrane, Eigen::AngleAxisd(angle, Direction::UnitZ()) *
                               Placement(Eigen::Translation3d(0.5 * (from_m + to_m), 0.0, foot_m + half_m))));
  }
  return wheel;
}

}  // namespace fillside
