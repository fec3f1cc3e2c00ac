#include "libsim/transport/openings.h"

#include "libsim/base/cases.h"
#include "libsim/transport/runs_in.h"

namespace fillside {

SeenShape seen_shape(const Emitter& emitter, const Point& seen_from) {
  return std::visit(
      Cases{[&](const LampDisc& lamp) -> SeenShape { return SeenDisc(lamp.disc, seen_from); },
            [&](const LampSphere& lamp) -> SeenShape { return SeenSphere(lamp.sphere, seen_from); },
            [&](const LightPanel& panel) -> SeenShape {
              return SphericalRectangle(panel.rectangle, seen_from);
            },
            [&](const Opening& opening) -> SeenShape {
              return SphericalRectangle(clear_part(opening), seen_from);
            }},
      emitter.kind);
}

std::optional<SeenEmitter> draw_emitter(const Scene& scene, std::size_t emitter, const SeenShape& shape,
                                        const Point& seen_from, double u, double v) {
  std::optional<SeenEmitter> drawn = std::visit(
      [&](const auto& seen) -> std::optional<SeenEmitter> {
        if (!seen.visible()) return std::nullopt;
        const auto [point, density] = seen.draw(u, v);
        const Direction to_source = (point - seen_from).normalized();
        return SeenEmitter{point, to_source, density,
                           emission_of(scene.emitters()[emitter], scene.outside(), point, to_source)};
      },
      shape);
  if (drawn && scene.sun()) drawn->emission.straight[scene.sun()->part] = grey(0.0);
  return drawn;
}

std::optional<SeenEmitter> draw_sun(const Scene& scene, std::size_t emitter, const Point& seen_from, double u,
                                    double v) {
  const Emitter& source = scene.emitters()[emitter];
  if (!scene.sun() || !std::holds_alternative<Opening>(source.kind)) return std::nullopt;
  const Direction to_sun = draw_in_disc(scene.sun()->disc, u, v);
  const Rectangle& opening = std::get<Opening>(source.kind).rectangle;
  const double toward = -to_sun.dot(opening.normal());
  const double distance_m = (seen_from - opening.centre).dot(opening.normal()) / toward;
  if (toward <= 0.0 || distance_m <= 0.0) return std::nullopt;
  const Point point = seen_from + distance_m * to_sun;
  if (opening.coordinates_of(point).cwiseAbs().maxCoeff() > 1.0) return std::nullopt;
  const std::size_t part = scene.sun()->part;
  SeenEmitter drawn{point, to_sun, 1.0 / solid_angle_sr(scene.sun()->disc), {}};
  drawn.emission.straight[part] = emission_of(source, scene.outside(), point, to_sun).straight[part];
  return drawn;
}

EmitterDensity density_of_emitter(const Scene& scene, std::size_t emitter, const Point& seen_from,
                                  const Point& point) {
  const double of_emitter =
      std::visit([&](const auto& seen) { return seen.visible() ? seen.density_per_sr(point) : 0.0; },
                 seen_shape(scene.emitters()[emitter], seen_from));
  return {of_emitter, scene.sun() ? 1.0 / solid_angle_sr(scene.sun()->disc) : 0.0};
}

Rgb see_through_passage(const Scene& scene, const Ray& ray, std::uint32_t mask) {
  Rgb passed = grey(1.0);
  Ray rest = ray;
  RunsIn medium;
  while (const auto hit = scene.caster().first_hit(rest, mask & ~kAllOpaque)) {
    const Surface& surface = scene.surfaces()[hit->surface];
    passed *= straight_transmittance(surface.material, std::abs(ray.direction.dot(hit->normal))) *
              medium.left_of_the_way(surface.material, *hit, ray.direction);
    medium.go_on(surface.material, hit->normal, ray.direction);
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
