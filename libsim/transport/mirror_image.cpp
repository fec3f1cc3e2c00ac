#include "libsim/transport/mirror_image.h"

#include <cmath>

#include "libsim/transport/openings.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr int kMostFaces = 8;               // clear panes and cloths one behind the other
constexpr std::uint32_t kDrawsOfALobe = 8;  // for each ray
constexpr std::uint32_t kLobeGroup = 61u << 20, kSunGroup = kLobeGroup + kMostFaces * kDrawsOfALobe;

/// A window or lamp that shines along a ray, and what of it arrives.
struct Shining {
  int emitter = kNone;
  double luminance_cd_m2 = 0.0, sun_cd_m2 = 0.0;  ///< without the sun's disc, and the disc
};

double luminance_of(const Emission& emission, std::size_t part, const Rgb& weight) {
  return luminance(weight * (emission.straight[part] + emission.curtain[part]));
}

Shining shining_along(const Scene& scene, const Ray& ray, const Rgb& weight) {
  const auto hit = scene.caster().first_hit(ray, kAllOpaque);
  if (!hit) return {};
  const int e = scene.surfaces()[hit->surface].emitter;
  if (e == kNone) return {};
  const auto index = static_cast<std::size_t>(e);
  const Emission emission =
      emission_of(scene.emitters()[index], scene.outside(), hit->position, ray.direction);
  const Rgb passed =
      weight * see_through_passage(scene, {ray.origin, ray.direction, hit->distance_m}, kEverything);
  Shining shining;
  for (std::size_t part = 0; part < scene.part_count(index); ++part) {
    const bool sun = scene.sun() && scene.sun()->part == part;
    (sun ? shining.sun_cd_m2 : shining.luminance_cd_m2) += luminance_of(emission, part, passed);
  }
  if (shining.luminance_cd_m2 > 0.0 || shining.sun_cd_m2 > 0.0) shining.emitter = e;
  return shining;
}

/// The lobe of a rough coat or metal; the sun in it is drawn on its own, being far smaller than the lobe.
double added_by_lobe(const Scene& scene, const SampleNumbers& numbers, std::uint32_t face,
                     const Vertex& vertex, const Direction& to_viewer, const Rgb& weight) {
  const Direction viewer = vertex.frame.to_local(to_viewer);
  double sum = 0.0;
  for (std::uint32_t draw = 0; draw < kDrawsOfALobe; ++draw) {
    const auto drawn =
        draw_scattering(vertex.material, viewer, numbers.group(kLobeGroup + face * kDrawsOfALobe + draw));
    if (!drawn) continue;
    const Direction to_source = vertex.frame.to_world(drawn->to_source);
    sum +=
        shining_along(scene, leaving(vertex.position, vertex.frame.normal, to_source), weight * drawn->weight)
            .luminance_cd_m2;
  }
  sum /= kDrawsOfALobe;
  if (!scene.sun()) return sum;
  for (std::size_t e = 0; e < scene.emitters().size(); ++e) {
    const Numbers2 u = numbers.pair(kSunGroup + face * 64 + static_cast<std::uint32_t>(e));
    const auto sun = draw_sun(scene, e, vertex.position, u[0], u[1]);
    if (!sun) continue;
    const Rgb scattering =
        scattering_cosine_per_sr(vertex.material, viewer, vertex.frame.to_local(sun->to_source));
    if (scattering.maxCoeff() <= 0.0) continue;
    const Ray way = leaving(vertex.position, vertex.frame.normal, sun->to_source);
    sum += shining_along(scene, way, weight * scattering / sun->density_per_sr).sun_cd_m2;
  }
  return sum;
}

MirrorSpot spot_at(const Scene& scene, const SampleNumbers& numbers, std::uint32_t face, const Hit& hit,
                   const Material& narrow, const Direction& to_viewer, const Rgb& weight, MirrorLight light) {
  const Vertex vertex{hit.position, frame_around(hit.normal), narrow};
  const Rgb share = mirrored_share(narrow, vertex.frame.to_local(to_viewer));
  const Ray mirrored = leaving(hit.position, hit.normal, reflected(to_viewer, hit.normal));
  const Shining shining = shining_along(scene, mirrored, weight * share);
  MirrorSpot spot{hit.surface, hit.position, shining.emitter, luminance(share), 0.0};
  if (light == MirrorLight::worked_out)
    spot.added_cd_m2 = has_lobe(narrow) ? added_by_lobe(scene, numbers, face, vertex, to_viewer, weight)
                                        : shining.luminance_cd_m2 + shining.sun_cd_m2;
  return spot;
}

/// What goes on straight behind a pane or cloth; nothing behind what bends.
Rgb passes_unbent(const Material& material, double cosine) {
  return std::holds_alternative<Dielectric>(material) ? grey(0.0) : straight_transmittance(material, cosine);
}

}  // namespace

MirrorSpots mirror_spots(const Scene& scene, const SampleNumbers& numbers, const Ray& ray,
                         MirrorLight light) {
  MirrorSpots spots;
  Ray rest = ray;
  Rgb weight = grey(1.0);
  for (std::uint32_t face = 0; face < kMostFaces && !spots.full(); ++face) {
    const auto hit = scene.caster().first_hit(rest, kEverything);
    if (!hit || scene.surfaces()[hit->surface].emitter != kNone) break;
    const Material& material = scene.surfaces()[hit->surface].material;
    const Direction to_viewer = -rest.direction;
    const auto narrow = narrow_part(material);
    if (narrow && !std::holds_alternative<ThinCloth>(*narrow))
      spots.add(spot_at(scene, numbers, face, *hit, *narrow, to_viewer, weight, light));
    weight *= passes_unbent(material, std::abs(to_viewer.dot(hit->normal)));
    if (weight.maxCoeff() <= 0.0) break;
    rest = leaving(hit->position, hit->normal, rest.direction);
  }
  return spots;
}

}  // namespace fillside
