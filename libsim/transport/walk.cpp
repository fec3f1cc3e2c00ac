#include "libsim/transport/walk.h"

#include <algorithm>
#include <cmath>

#include "libsim/matter/fresnel.h"
#include "libsim/transport/openings.h"
#include "libsim/transport/runs_in.h"

namespace fillside {
namespace {

constexpr std::uint32_t kGroupsOfAVertex = 32;  // one for scattering, one for each emitter
constexpr int kMostTurns = 20000;               // only a set without absorption could come near it

/// Veach and Guibas, "Optimally Combining Sampling Techniques for Monte Carlo Rendering", SIGGRAPH 1995,
/// sec. 3.1: the power heuristic with exponent 2.
double power_weight(double own, double other) {
  const double own2 = own * own;
  return own2 > 0.0 ? own2 / (own2 + other * other) : 0.0;
}

/// How an emitter that the drawn direction happens to hit must be counted, so that shadow rays and drawn
/// directions together count it once.
struct CameFrom {
  Point position = Point::Zero();
  double density_per_sr = 0.0;
  enum { shadow_rays_alone, both, drawn_alone } counted_by = drawn_alone;
  bool by_glass = false;  ///< mirrored since by a clear face
};

/// The emission that a drawn direction still has to count.
Emission left_to_drawn(const Scene& scene, std::size_t emitter, const Point& point, const CameFrom& from,
                       Emission emission) {
  // The sun's image in glass or water, as it falls on other things, is left out like all bright lines in the
  // shadow of glass: a ray would find it once in ten thousand draws, ten thousand times too bright.
  if (from.by_glass && scene.sun()) emission.straight[scene.sun()->part] = grey(0.0);
  if (from.counted_by == CameFrom::drawn_alone) return emission;
  if (from.counted_by == CameFrom::shadow_rays_alone) return {};
  const EmitterDensity density = density_of_emitter(scene, emitter, from.position, point);
  for (std::size_t part = 0; part < scene.part_count(emitter); ++part) {
    const bool sun = scene.sun() && scene.sun()->part == part;
    emission.straight[part] *=
        power_weight(from.density_per_sr, sun ? density.sun_per_sr : density.emitter_per_sr);
    emission.curtain[part] *= power_weight(from.density_per_sr, density.emitter_per_sr);
  }
  return emission;
}

/// The direction that refraction would have given a way that came straight into a medium.
Direction bent_in(const Direction& to_viewer, double bend) {
  const double x = bend * to_viewer.x(), y = bend * to_viewer.y();
  return {x, y, std::copysign(std::sqrt(std::max(0.0, 1.0 - x * x - y * y)), to_viewer.z())};
}

/// What a clear face mirrors, drawn for certain: what goes straight through it is the receiver's own affair.
/// A way that came straight into glass is bent here for what goes to and fro in it, and loses what radiance
/// gained.
Scattered mirrored_alone(const Material& face, Direction to_viewer, bool came_straight) {
  double share = 0.0, bend = 1.0;
  if (const auto* pane = std::get_if<ClearPane>(&face))
    share = pane_shares(*pane, std::abs(to_viewer.z())).mirrored;
  if (const auto* media = std::get_if<Dielectric>(&face)) {
    const double near = medium_toward(*media, to_viewer.z()).index,
                 far = medium_toward(*media, -to_viewer.z()).index;
    if (came_straight) bend = std::min(1.0, far / near);
    to_viewer = bent_in(to_viewer, bend);
    share = face_reflectance(far / near, std::abs(to_viewer.z()));
  }
  return {{-to_viewer.x(), -to_viewer.y(), to_viewer.z()}, grey(share), 0.0, Turn::mirrored, bend * bend};
}

class Walker {
 public:
  Walker(const WalkContext& context, std::span<Rgb> radiance) : context_(context), radiance_(radiance) {}

  void follow(Vertex vertex, Direction to_viewer, Rgb weight, FirstVertex first);

 private:
  void add_emission(std::size_t emitter, const Emission& emission, const Direction& outward,
                    const Rgb& weight);
  void add_light_from(std::size_t emitter, const SeenEmitter& seen, const Vertex& vertex,
                      const Direction& to_viewer, const Rgb& weight);
  void add_light_from_emitters(const Vertex& vertex, const Direction& to_viewer, const Rgb& weight);
  std::optional<Vertex> next_vertex(const Hit& hit, const Direction& to_hit, const Rgb& weight,
                                    const CameFrom& from);
  std::uint32_t group(std::uint32_t slot) const {
    return context_.first_group + turn_ * kGroupsOfAVertex + slot;
  }
  Numbers4 numbers(std::uint32_t slot) const { return context_.numbers.group(group(slot)); }

  const WalkContext& context_;
  std::span<Rgb> radiance_;
  std::uint32_t turn_ = 0;
};

void Walker::add_emission(std::size_t emitter, const Emission& emission, const Direction& outward,
                          const Rgb& weight) {
  const auto add = [&](std::size_t row, const Rgb& straight, const Rgb& spread) {
    radiance_[row] += weight * (straight + spread);
  };
  add_by_rows(context_.scene, context_.rows, emitter, emission, outward, add);
}

void Walker::add_light_from(std::size_t emitter, const SeenEmitter& seen, const Vertex& vertex,
                            const Direction& to_viewer, const Rgb& weight) {
  const Direction local_viewer = vertex.frame.to_local(to_viewer),
                  local_source = vertex.frame.to_local(seen.to_source);
  const Rgb scattering = scattering_cosine_per_sr(vertex.material, local_viewer, local_source);
  if (scattering.maxCoeff() <= 0.0) return;
  const Ray ray = shadow_ray(vertex.position, vertex.frame.normal, seen.point);
  const Rgb passed = passage(context_.scene, ray, context_.mask);
  if (passed.maxCoeff() <= 0.0) return;
  const double share =
      scatters_widely(vertex.material)
          ? 1.0
          : power_weight(seen.density_per_sr,
                         density_of_scattering_per_sr(vertex.material, local_viewer, local_source));
  add_emission(emitter, seen.emission, seen.to_source,
               weight * scattering * passed * (share / seen.density_per_sr));
}

void Walker::add_light_from_emitters(const Vertex& vertex, const Direction& to_viewer, const Rgb& weight) {
  const Scene& scene = context_.scene;
  for (std::size_t e = 0; e < scene.emitters().size(); ++e) {
    const std::uint32_t slot = 1 + static_cast<std::uint32_t>(e);
    const Numbers2 u = context_.numbers.pair(group(slot));
    const SeenShape shape = seen_shape(scene.emitters()[e], vertex.position);
    if (const auto seen = draw_emitter(scene, e, shape, vertex.position, u[0], u[1]))
      add_light_from(e, *seen, vertex, to_viewer, weight);
    if (!scene.sun()) continue;
    const Numbers4 all = numbers(slot);
    if (const auto sun = draw_sun(scene, e, vertex.position, all[2], all[3]))
      add_light_from(e, *sun, vertex, to_viewer, weight);
  }
}

std::optional<Vertex> Walker::next_vertex(const Hit& hit, const Direction& to_hit, const Rgb& weight,
                                          const CameFrom& from) {
  const Scene& scene = context_.scene;
  const int e = scene.surfaces()[hit.surface].emitter;
  if (e == kNone) {
    Vertex vertex = vertex_at(scene, hit);
    if (turn_ >= context_.kept.turns_before_end) vertex.cell = context_.kept.cell_of(hit, to_hit);
    return vertex;
  }
  const Emitter& emitter = scene.emitters()[static_cast<std::size_t>(e)];
  if (from.counted_by != CameFrom::shadow_rays_alone) {
    const Emission emission = emission_of(emitter, scene.outside(), hit.position, to_hit);
    const auto index = static_cast<std::size_t>(e);
    add_emission(index, left_to_drawn(scene, index, hit.position, from, emission), to_hit, weight);
  }
  return room_face_at(scene, emitter, hit);
}

void Walker::follow(Vertex vertex, Direction to_viewer, Rgb weight, FirstVertex first) {
  CameFrom from;
  RunsIn medium;
  for (turn_ = 0; turn_ < kMostTurns; ++turn_) {
    // 0. In the cached mode: where the store knows what leaves this place, the walk is at its end.
    if (vertex.cell != SurfaceCells::kNone) return context_.kept.end_at(vertex.cell, weight, radiance_);

    // 1. Light that reaches this place straight from windows and lamps, by shadow rays.
    if (!is_clear(vertex.material)) add_light_from_emitters(vertex, to_viewer, weight);

    // 2. Draw where the rest of the light came from.
    const Direction local_viewer = vertex.frame.to_local(to_viewer);
    const bool turned_only = turn_ == 0 && first != FirstVertex::everything;
    const auto drawn =
        turned_only && is_clear(vertex.material)
            ? mirrored_alone(vertex.material, local_viewer, first == FirstVertex::turned_after_straight)
            : draw_scattering(vertex.material, local_viewer, numbers(0));
    if (!drawn || (turned_only && drawn->turn == Turn::straight)) return;
    weight *= drawn->weight;
    if (drawn->turn == Turn::spread)
      from = {vertex.position, drawn->density_per_sr,
              scatters_widely(vertex.material) ? CameFrom::shadow_rays_alone : CameFrom::both, false};
    else if (drawn->turn == Turn::mirrored) {  // straight on: as it was at the last turn
      from.counted_by = CameFrom::drawn_alone;
      from.by_glass = from.by_glass || is_clear(vertex.material);
    }

    // 3. Roulette on what this surface returns, never on the whole path: dark corners stay as well sampled as
    // light ones. Not on a coat that the lens looks at: it mirrors a twenty-fifth, and one sample in
    // twenty-five would have to stand for all. Where the drawn direction has a share in the emitters' light
    // (a coat that mirrors little, a bright window) it is played only after that light is in. A walk that
    // ends at a cell soon plays none: it would save few rays.
    const bool looked_at = turn_ == 0 && first == FirstVertex::everything && has_lobe(vertex.material),
               ends_soon = context_.kept.ends != nullptr && turn_ <= context_.kept.turns_before_end;
    const double survives = looked_at || ends_soon ? 1.0 : std::min(1.0, drawn->weight.maxCoeff());
    const bool lives = numbers(0)[3] < survives, early = from.counted_by == CameFrom::shadow_rays_alone;
    if (early && !lives) return;
    if (early) weight /= survives;
    weight *= drawn->concentration;

    // 4. The next surface that way; past the last one there is nothing.
    const Direction to_hit = vertex.frame.to_world(drawn->to_source);
    const auto hit = context_.scene.caster().first_hit(leaving(vertex.position, vertex.frame.normal, to_hit),
                                                       context_.mask);
    if (!hit) return;
    medium.go_on(vertex.material, vertex.frame.normal, to_hit);
    weight *= medium.left_of_the_way(context_.scene.surfaces()[hit->surface].material, *hit, to_hit);

    // 5. Its own light, if shadow rays have not counted it, and its surface.
    auto next = next_vertex(*hit, to_hit, weight, from);
    if (!next || !lives) return;
    if (!early) weight /= survives;
    vertex = std::move(*next);
    to_viewer = -to_hit;
  }
}

}  // namespace

Vertex vertex_at(const Scene& scene, const Hit& hit) {
  const Surface& surface = scene.surfaces()[hit.surface];
  return {hit.position, frame_around(hit.normal),
          material_at(surface, {hit.position, hit.triangle, hit.along_second, hit.along_third}),
          surface.object};
}

std::optional<Vertex> room_face_at(const Scene&, const Emitter& emitter, const Hit& hit) {
  auto material = room_face(emitter, hit.position);
  if (!material) return std::nullopt;
  return Vertex{hit.position, frame_around(hit.normal), std::move(*material),
                object_at(emitter, hit.position)};
}

void walk(const WalkContext& context, Vertex vertex, const Direction& to_viewer, const Rgb& weight,
          FirstVertex first, std::span<Rgb> radiance) {
  Walker(context, radiance).follow(std::move(vertex), to_viewer, weight, first);
}

}  // namespace fillside
