#include "libsim/sensor/map_plane.h"

namespace fillside {
namespace {

Point place_in(const MapPlane& plane, std::size_t element, double u, double v) {
  const auto columns = static_cast<std::size_t>(plane.columns);
  const double column = static_cast<double>(element % columns) + u, row = static_cast<double>(element / columns) + v;
  return plane.rectangle.at(2.0 * column / plane.columns - 1.0, 1.0 - 2.0 * row / plane.rows);
}

}  // namespace

Point MapPlane::middle_of(std::size_t element) const { return place_in(*this, element, 0.5, 0.5); }

Receiver MapPlane::draw(std::size_t element, double u, double v) const {
  return {place_in(*this, element, u, v), rectangle.normal(), FlatReceptor{}};
}

bool is_covered(const MapPlane& plane, const Scene& scene, std::size_t element) {
  const Direction up = plane.rectangle.normal();
  const std::uint32_t mask = plane.subject_there ? kAllOpaque : kAllOpaque & kWithoutSubject;
  const auto hit = scene.caster().first_hit(leaving(plane.middle_of(element), up, up), mask);
  if (!hit || scene.surfaces()[hit->surface].emitter != kNone) return false;
  const ObjectKind kind = scene.objects()[scene.surfaces()[hit->surface].object].kind;
  return kind != ObjectKind::room && hit->normal.dot(up) > 0.0;  // the inside of a closed thing
}

}  // namespace fillside
