#include "libsim/sensor/map_plane.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fillside {
namespace {

Point place_in(const MapPlane& plane, std::size_t element, double u, double v) {
  const auto columns = static_cast<std::size_t>(plane.columns);
  const std::size_t row = element / columns, column = element % columns;
  const double across = static_cast<double>(column) + u, down = static_cast<double>(row) + v;
  return plane.rectangle.at(2.0 * across / plane.columns - 1.0, 1.0 - 2.0 * down / plane.rows);
}

/// True when the way starts inside something closed: it leads out of more than it has entered.
bool leads_out(const Scene& scene, Ray way, std::uint32_t mask) {
  constexpr int kMostCrossed = 1000;  // no set is so full; a way that stuck on a face would never end
  int entered = 0;
  for (int crossed = 0; crossed < kMostCrossed; ++crossed) {
    const auto hit = scene.caster().first_hit(way, mask);
    if (!hit) return false;
    const Surface& surface = scene.surfaces()[hit->surface];
    if (surface.emitter != kNone || scene.objects()[surface.object].kind == ObjectKind::room) return false;
    entered += hit->normal.dot(way.direction) < 0.0 ? 1 : -1;
    if (entered < 0) return true;
    way = leaving(hit->position, hit->normal, way.direction);
  }
  return false;
}

/// True when something stands or lies so little above a place that nothing else fits between.
bool roofed(const Scene& scene, const Ray& upward, std::uint32_t mask) {
  constexpr double kTooLow_m = 0.03;
  const auto hit = scene.caster().first_hit(upward, mask);
  if (!hit || hit->distance_m > kTooLow_m) return false;
  const Surface& surface = scene.surfaces()[hit->surface];
  return surface.emitter == kNone && scene.objects()[surface.object].kind != ObjectKind::room;
}

/// Three ways all round that rise from the plane by a hundredth.
std::array<Direction, 3> low_ways(const Rectangle& rectangle) {
  constexpr double kRise = 0.01;
  const Frame frame = frame_around(rectangle.normal());
  std::array<Direction, 3> ways;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const double azimuth = 2.0 * kPi * static_cast<double>(i) / 3.0;
    ways[i] = frame.to_world(Direction(std::cos(azimuth), std::sin(azimuth), kRise).normalized());
  }
  return ways;
}

}  // namespace

Point MapPlane::middle_of(std::size_t element) const { return place_in(*this, element, 0.5, 0.5); }

Receiver MapPlane::draw(std::size_t element, double u, double v) const {
  return {place_in(*this, element, u, v), rectangle.normal(), FlatReceptor{}};
}

/// An open sheet overhead, its front up, looks from below like the inside of a thing, but not from the side.
/// One side is enough: from a place right on a face of something thin, the ways that go in by that face tell
/// nothing.
bool is_covered(const MapPlane& plane, const Scene& scene, std::size_t element) {
  const std::uint32_t mask = plane.subject_there ? kAllOpaque : kAllOpaque & kWithoutSubject;
  const Direction upward = plane.rectangle.normal();
  const auto way_from_here = [&](const Direction& way) {
    return leaving(plane.middle_of(element), upward, way);
  };
  const auto inside = [&](const Direction& way) { return leads_out(scene, way_from_here(way), mask); };
  return roofed(scene, way_from_here(upward), mask) ||
         (inside(upward) && std::ranges::any_of(low_ways(plane.rectangle), inside));
}

}  // namespace fillside
