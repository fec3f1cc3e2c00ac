#include "libsim/what_if/remarks_on_standing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "libsim/what_if/named_section.h"

namespace fillside {
namespace {

constexpr double kLeastDrop_m = 0.005, kLow_m = 1e-3;

/// All but one object: what lies in the same plane as its underside would be lost behind it.
RayCaster without(const Scene& scene, std::uint16_t object) {
  std::vector<CastSurface> others;
  for (const Surface& surface : scene.surfaces())
    if (surface.object != object) others.push_back({&surface.mesh, kOpaque});
  return RayCaster(others);
}

/// What tells no height and stands on nothing named was put on the table by the program.
bool may_hang(const Description& description, const std::string& name) {
  bool may = false;
  with_section_named(description, name, [&](std::string_view, const auto& thing) {
    if constexpr (requires { thing.on.empty(); }) may = thing.spot.z.has_value() || !thing.on.empty();
  });
  return may;
}

}  // namespace

std::optional<double> drop_m(const Scene& scene, std::uint16_t object) {
  double low_m = 1e30;
  for (const Surface& surface : scene.surfaces())
    if (surface.object == object) low_m = std::min(low_m, bounds_of(surface.mesh).low.z());
  const RayCaster others = without(scene, object);
  std::optional<double> least;
  for (const Surface& surface : scene.surfaces()) {
    if (surface.object != object) continue;
    for (const Point& corner : surface.mesh.corners) {
      if (corner.z() > low_m + kLow_m) continue;
      const Point above = corner + Point(0, 0, kLow_m);
      if (const auto hit = others.first_hit({above, -Direction::UnitZ(), 20.0}, kOpaque)) {
        const double way_m = std::max(0.0, hit->distance_m - kLow_m);
        least = std::min(least.value_or(way_m), way_m);
      }
      if (least && *least < kLeastDrop_m) return least;  // it stands
    }
  }
  return least;
}

void remark_on_standing(const Description& description, const Scene& scene, SetRemarks& remarks) {
  for (std::size_t i = 0; i < scene.objects().size(); ++i) {
    const Object& object = scene.objects()[i];
    if (object.kind != ObjectKind::food && object.kind != ObjectKind::prop) continue;
    if (!may_hang(description, object.name)) continue;
    const auto fall_m = drop_m(scene, static_cast<std::uint16_t>(i));
    if (!fall_m || *fall_m < kLeastDrop_m) continue;
    say_of(description, object.name, {"z", "distance", "x", "y", "clock"},
           fmt::format("it hangs in the air, {} over what is below",
                       length_text(1e-3 * std::round(1e3 * *fall_m))),
           "leave z out, or say on = what it stands on", remarks.warnings);
  }
}

}  // namespace fillside
