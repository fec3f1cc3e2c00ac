#include "libsim/sensor/lit_share.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "libsim/sensor/frame_grid.h"

namespace fillside {
namespace {

constexpr int kLongSide = 480;

/// The outline of what shines and its middle: what comes over a horizon first is on the outline.
std::vector<Point> places_on(const Emitter& emitter) {
  const Rectangle shines = shining_rectangle(emitter);
  const bool round =
      std::holds_alternative<LampDisc>(emitter.kind) || std::holds_alternative<LampSphere>(emitter.kind);
  constexpr int kRound = 32;
  constexpr double kWithin = 0.998;  // not in the frame of the window itself
  std::vector<Point> places{shines.centre};
  for (int i = 0; i < kRound; ++i) {
    const double angle = 2.0 * kPi * i / kRound, u = std::cos(angle), v = std::sin(angle);
    const double reach = kWithin / (round ? 1.0 : std::max(std::abs(u), std::abs(v)));
    places.push_back(shines.at(reach * u, reach * v));
  }
  return places;
}

bool is_lit(const Scene& scene, const Hit& hit, const Ray& ray, const std::vector<Point>& places) {
  const Direction outward = hit.normal.dot(ray.direction) < 0.0 ? hit.normal : Direction(-hit.normal);
  return std::ranges::any_of(places, [&](const Point& place) {
    return (place - hit.position).dot(outward) > 0.0 &&
           !scene.caster().blocked(shadow_ray(hit.position, outward, place), kAllOpaque);
  });
}

}  // namespace

std::optional<double> lit_share(const Scene& scene, const Camera& camera, std::uint16_t object,
                                std::size_t emitter) {
  const std::vector<Point> places = places_on(scene.emitters()[emitter]);
  const FrameGrid grid(camera, kLongSide);
  int seen = 0, lit = 0;
  for (int row = 0; row < grid.rows(); ++row)
    for (int column = 0; column < grid.columns(); ++column) {
      const Ray ray = grid.ray(column, row);
      const auto hit = scene.caster().first_hit(ray, kEverything);
      if (!hit || scene.surfaces()[hit->surface].object != object) continue;
      ++seen;
      if (is_lit(scene, *hit, ray, places)) ++lit;
    }
  if (seen == 0) return std::nullopt;
  return static_cast<double>(lit) / seen;
}

}  // namespace fillside
