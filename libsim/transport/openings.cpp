#include "libsim/transport/openings.h"

namespace fillside {

std::optional<SeenEmitter> draw_emitter(const Scene& scene, std::size_t emitter, const Point& seen_from, double u,
                                        double v) {
  const Emitter& source = scene.emitters()[emitter];
  const SphericalRectangle seen(rectangle_of(source), seen_from);
  if (!seen.visible()) return std::nullopt;
  const auto [point, density] = seen.draw(u, v);
  const Direction to_source = (point - seen_from).normalized();
  return SeenEmitter{point, to_source, density, emission_of(source, scene.outside(), point, to_source)};
}

Rgb see_through_passage(const Scene& scene, const Ray& ray, std::uint32_t mask) {
  Rgb passed = grey(1.0);
  Ray rest = ray;
  while (const auto hit = scene.caster().first_hit(rest, mask & ~kAllOpaque)) {
    const Surface& surface = scene.surfaces()[hit->surface];
    passed *= straight_transmittance(surface.material, std::abs(ray.direction.dot(hit->normal)));
    if (passed.maxCoeff() <= 0.0) return grey(0.0);
    rest = leaving(hit->position, hit->normal, ray.direction);
    rest.far_m = ray.far_m - (rest.origin - ray.origin).dot(ray.direction);
  }
  return passed;
}

Rgb passage(const Scene& scene, const Ray& shadow_ray, std::uint32_t mask) {
  if (scene.caster().blocked(shadow_ray, mask & kAllOpaque)) return grey(0.0);
  return scene.has_see_through() ? see_through_passage(scene, shadow_ray, mask) : grey(1.0);
}

}  // namespace fillside
