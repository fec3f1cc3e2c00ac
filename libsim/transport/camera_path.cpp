#include "libsim/transport/camera_path.h"

#include <cmath>
#include <vector>

#include "libsim/transport/runs_in.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr int kMostTurns = 64;  // a filled glass takes eight and what goes to and fro in it
constexpr int kTurnsBeforeRoulette = 4;
constexpr std::uint32_t kTurnGroup = 62 * kGroupsOfAWalk;
constexpr std::uint32_t kLobeWalk = 63 * kGroupsOfAWalk;  // between those of gather's panes and its boards

/// Rows of a window or lamp that the ray looks at, straight or in a mirror.
void add_emission(const Scene& scene, std::size_t e, const Emission& emission, const Rgb& weight,
                  std::size_t via, Ledger& ledger) {
  const std::size_t first = scene.first_source(e);
  const std::size_t curtain = via == kStraight ? via_of_object(scene.emitters()[e].curtain_object) : via;
  for (std::size_t part = 0; part < scene.part_count(e); ++part) {
    ledger.add(first + part, via, weight * emission.straight[part]);
    if (emission.curtain[part].maxCoeff() > 0.0)
      ledger.add(first + part, curtain, weight * emission.curtain[part]);
  }
}

/// The surface there; an emitter's own light is added on the way.
std::optional<Vertex> arrive(const GatherContext& context, const Hit& hit, const Direction& forward,
                             const Rgb& weight, std::size_t via, Ledger& ledger) {
  const Scene& scene = context.scene;
  const int e = scene.surfaces()[hit.surface].emitter;
  if (e == kNone) return vertex_at(scene, hit);
  const Emitter& emitter = scene.emitters()[static_cast<std::size_t>(e)];
  add_emission(scene, static_cast<std::size_t>(e),
               emission_of(emitter, scene.outside(), hit.position, forward), weight, via, ledger);
  return room_face_at(scene, emitter, hit);
}

/// Light that comes by the lobe of a rough mirror or coat: drawn, and weighted against shadow rays, by a walk
/// of its own. All of it was turned last by this surface.
void add_lobe(const GatherContext& context, const SampleNumbers& numbers, int kept_replicate, Vertex vertex,
              const Material& lobe, const Direction& to_viewer, const Rgb& weight, Ledger& ledger) {
  vertex.material = lobe;
  const std::size_t via = via_of_object(vertex.object);
  std::vector<Rgb> radiance(ledger.source_count(), grey(0.0));
  walk({context.scene, numbers, kLobeWalk, context.mask, context.rows, {context.kept, kept_replicate}},
       std::move(vertex), to_viewer, weight, FirstVertex::everything, radiance);
  for (std::size_t source = 0; source < radiance.size(); ++source)
    if (radiance[source].maxCoeff() > 0.0) ledger.add(source, via, radiance[source]);
}

}  // namespace

void add_radiance_along(Gatherer& gatherer, const SampleNumbers& numbers, int kept_replicate, const Ray& ray,
                        Ledger& ledger) {
  const GatherContext& context = gatherer.context();
  Ray rest = ray;
  Rgb weight = grey(1.0);
  std::size_t via = kStraight;
  RunsIn medium;
  for (std::uint32_t turn = 0; turn < kMostTurns; ++turn) {
    // 1. The next surface; the light of a window or lamp is taken on the way.
    const auto hit = context.scene.caster().first_hit(rest, context.mask);
    if (!hit) return;
    weight *= medium.left_of_the_way(context.scene.surfaces()[hit->surface].material, *hit, rest.direction);
    const auto vertex = arrive(context, *hit, rest.direction, weight, via, ledger);
    if (!vertex) return;
    const Direction to_viewer = -rest.direction;
    // 2. What it scatters widely is gathered here.
    if (const auto wide = wide_part(vertex->material))
      gatherer.gather({.first = numbers,
                       .receiver = {vertex->position, vertex->frame.normal, SeenSurface{*wide, to_viewer}},
                       .weight = weight,
                       .kept_replicate = kept_replicate,
                       .ledger = ledger});
    // 3. The rest is followed: a lobe by a walk, exact mirrors and what goes straight from here.
    const auto narrow = narrow_part(vertex->material);
    if (!narrow) return;
    if (has_lobe(*narrow)) {
      add_lobe(context, numbers, kept_replicate, *vertex, *narrow, to_viewer, weight, ledger);
      return;
    }
    const Numbers4 u = numbers.group(kTurnGroup + turn);
    const auto drawn = draw_scattering(*narrow, vertex->frame.to_local(to_viewer), u);
    if (!drawn) return;
    weight *= drawn->weight;
    if (weight.maxCoeff() <= 0.0) return;
    if (drawn->turn != Turn::straight) via = via_of_object(vertex->object);
    if (turn >= kTurnsBeforeRoulette) {
      const double survives = std::min(1.0, drawn->weight.maxCoeff());
      if (u[3] >= survives) return;
      weight /= survives;
    }
    weight *= drawn->concentration;
    const Direction onward = vertex->frame.to_world(drawn->to_source);
    medium.go_on(vertex->material, vertex->frame.normal, onward);
    rest = leaving(vertex->position, vertex->frame.normal, onward);
  }
}

}  // namespace fillside
