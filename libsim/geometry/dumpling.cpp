// A pleated half-moon dumpling lying on its belly, its seam a wavy fin along the top; and a ring of them.
#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/dumpling.h"
#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kPleats = 7;

/// Flattens the lowest part so that the dumpling rests on more than a point; smooth and rising everywhere.
double settled(double height, double sunk) {
  return height > 2.0 * sunk ? height - sunk : height * height / (4.0 * sunk);
}

/// From a corner of a turned unit ball (its axis along the dumpling) to the half-moon. Around the seam the
/// cross section is a teardrop; `round` is the angle from the fin.
Point half_moon(const Point& ball, const ItemSize& size, double phase) {
  const double along = 2.0 * ball.z() - 1.0;  // -1 .. 1, tip to tip
  const double girth = std::sqrt(std::max(0.0, 1.0 - along * along));
  const double round = std::atan2(ball.y(), ball.x());
  const double near_fin = std::pow(std::cos(0.5 * round), 4.0);
  const double teardrop = std::sin(round) * (0.14 + 0.86 * std::pow(std::abs(std::sin(0.5 * round)), 1.3));
  const double wave = std::sin(kPi * kPleats * along + phase);
  const double front =
      round > 0.0 ? 0.6 * std::pow(std::sin(round), 2.0) : 0.0;  // folds show on the camera side
  const double ruffle_m = 0.5 * size.relief_m * wave * girth * (near_fin - front);
  const double bend_m = 0.28 * size.depth_m * along * along;
  const double rise =
      0.25 * along * along + std::pow(girth, 0.9) * settled(0.5 * (1.0 + std::cos(round)), 0.1);
  return {0.5 * size.width_m * along, -0.45 * size.depth_m * girth * teardrop + bend_m + ruffle_m,
          size.height_m * rise};
}

}  // namespace

Mesh dumpling_mesh(const ItemSize& size, std::uint64_t seed, int along, int around) {
  Profile unit_ball;
  for (int i = 0; i <= along; ++i) {
    const double t = kPi * i / along;
    unit_ball.push_back({i == 0 || i == along ? 0.0 : std::sin(t), 0.5 * (1.0 - std::cos(t))});
  }
  Mesh mesh = turned(unit_ball, Plan{.segments = around});
  const double phase = kPi * value_noise({0.5, 0.5, 0.5}, seed);
  for (Point& corner : mesh.corners) corner = half_moon(corner, size, phase);
  move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {  // dough is never quite smooth
    return 0.1 * size.relief_m * bumps(before[i], 0.09 * size.width_m, seed);
  });
  return mesh;
}

Item dumpling_form(const ItemSize& size, std::uint64_t seed) {
  return {{{"body", dumpling_mesh(size, seed, 128, 160)}}};
}

/// Five around one, each a little off its place, bent along the ring.
Item dumplings_form(const ItemSize& size, std::uint64_t seed) {
  constexpr int kRing = 5;
  const double w = 0.41 * size.width_m;
  const ItemSize each{w, 0.5 * w, 0.43 * w, std::min(size.relief_m, 0.04 * w), 0.0};
  Item item;
  for (int i = 0; i <= kRing; ++i) {
    const std::uint64_t own = mixed(seed, static_cast<std::uint64_t>(i));
    Mesh dumpling = dumpling_mesh(each, own, 64, 64);
    const double lift_m = -bounds_of(dumpling).low.z();
    const bool middle = i == kRing;
    const double angle = middle ? 0.0 : 2.0 * kPi * (i + dealt(own, 1, -0.06, 0.06)) / kRing + 0.3;
    const double out_m = middle ? 0.0 : 0.38 * size.width_m, turn = dealt(own, 2, -0.14, 0.14);
    const Placement place = Eigen::AngleAxisd(angle, Direction::UnitZ()) *
                            Placement(Eigen::Translation3d(0.0, out_m, lift_m)) *
                            Eigen::AngleAxisd(kPi + turn, Direction::UnitZ());
    add_part(item, "body", moved(dumpling, place));
  }
  return item;
}

}  // namespace fillside
