#include "libsim/transport/sunbeam.h"

#include "libsim/transport/openings.h"

namespace fillside {
namespace {

/// Where the line from a place to the sun meets the emitter's rectangle; nothing when it passes beside it.
std::optional<Point> crossing(const Rectangle& opening, const Point& at, const Direction& to_sun) {
  const double toward = -to_sun.dot(opening.normal());
  const double distance_m = (at - opening.centre).dot(opening.normal()) / toward;
  if (toward <= 0.0 || distance_m <= 0.0) return std::nullopt;
  const Point point = at + distance_m * to_sun;
  if (opening.coordinates_of(point).cwiseAbs().maxCoeff() > 1.0) return std::nullopt;
  return point;
}

}  // namespace

Rgb sunbeam(const Scene& scene, const Point& at, const Direction& normal, const Direction& to_sun,
            std::uint32_t mask) {
  Rgb sum = grey(0.0);
  for (const Emitter& emitter : scene.emitters()) {
    if (!std::holds_alternative<Opening>(emitter.kind)) continue;
    const auto point = crossing(rectangle_of(emitter), at, to_sun);
    if (!point) continue;
    const Rgb let_in = emission_of(emitter, scene.outside(), *point, to_sun).straight[0];
    if (let_in.maxCoeff() > 0.0) sum += let_in * passage(scene, shadow_ray(at, normal, *point), mask);
  }
  return sum;
}

double sun_behind_glass(const Emitter& emitter, const Direction& to_sun) {
  const auto* opening = std::get_if<Opening>(&emitter.kind);
  const double cosine = opening ? -to_sun.dot(opening->rectangle.normal()) : 0.0;
  return cosine > 0.0 ? cosine * pane_shares(opening->glass, cosine).transmitted : 0.0;
}

}  // namespace fillside
