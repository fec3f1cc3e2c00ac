// Ball and egg: one smooth skin, bumpy when asked (an orange, a meatball).
#include <algorithm>
#include <cmath>

#include "libsim/geometry/item_forms.h"
#include "libsim/geometry/lathe.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

constexpr int kRings = 96;  ///< even, so that a ball's equator is met exactly

/// Own curve: a circle's section whose radius is weighted toward the foot, r = sin t (1 + bluntness cos t),
/// z = (1 - cos t) / 2, t from 0 at the foot to pi. Bluntness 0 is a ball or ellipsoid; hens' eggs look right
/// with about 0.2. Scaled so that the widest ring has the asked width.
Profile egg_profile(const ItemSize& size, double bluntness) {
  Profile profile;
  double widest = 0.0;
  for (int i = 0; i <= kRings; ++i) {
    const double t = kPi * i / kRings;
    const bool on_axis = i == 0 || i == kRings;
    const double radius = on_axis ? 0.0 : std::sin(t) * (1.0 + bluntness * std::cos(t));
    widest = std::max(widest, radius);
    profile.push_back({radius, 0.5 * size.height_m * (1.0 - std::cos(t)), 1.0});
  }
  for (ProfilePoint& point : profile) point.radius_m *= 0.5 * size.width_m / widest;
  return profile;
}

Item skin(const ItemSize& size, std::uint64_t seed, double bluntness) {
  Mesh mesh = turned(egg_profile(size, bluntness), {.depth_ratio = size.depth_m / size.width_m});
  if (size.relief_m > 0.0)
    move_along_normals(mesh, [&, before = mesh.corners](std::size_t i) {
      return 0.5 * size.relief_m * bumps(before[i], 0.12 * size.width_m, seed);
    });
  return {{{"body", std::move(mesh)}}};
}

}  // namespace

Item ball_form(const ItemSize& size, std::uint64_t seed) { return skin(size, seed, 0.0); }

/// Stands on its blunt end, as eggs do in a lesson about light on a form.
Item egg_form(const ItemSize& size, std::uint64_t seed) { return skin(size, seed, 0.2); }

}  // namespace fillside
