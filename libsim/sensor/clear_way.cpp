#include "libsim/sensor/clear_way.h"

namespace fillside {

ClearWay clear_way(const Scene& scene, const Point& from, const Direction& along, double longest_m) {
  const auto hit = scene.caster().first_hit({from, along, longest_m}, kAllOpaque);
  if (!hit) return {longest_m, {}};
  return {hit->distance_m, scene.objects()[scene.surfaces()[hit->surface].object].name};
}

}  // namespace fillside
