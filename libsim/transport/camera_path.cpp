#include "libsim/transport/camera_path.h"

#include <cmath>

#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr std::uint32_t kTurnGroup = 1;  // groups 1 to 14 belong to the turns before the receiver
constexpr int kMostTurns = 14;
constexpr int kTurnsBeforeRoulette = 4;

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

}  // namespace

void add_radiance_along(Gatherer& gatherer, const SampleNumbers& numbers, const Ray& ray, Ledger& ledger) {
  const GatherContext& context = gatherer.context();
  Ray rest = ray;
  Rgb weight = grey(1.0);
  std::size_t via = kStraight;
  for (std::uint32_t turn = 0; turn < kMostTurns; ++turn) {
    const auto hit = context.scene.caster().first_hit(rest, context.mask);
    if (!hit) return;
    const auto vertex = arrive(context, *hit, rest.direction, weight, via, ledger);
    if (!vertex) return;
    const bool wide = scatters_widely(vertex->material);
    if (wide)
      gatherer.gather(
          numbers, 1, {vertex->position, vertex->frame.normal, SeenSurface{vertex->material, -rest.direction}},
          weight, ledger);
    if (std::holds_alternative<Matte>(vertex->material)) return;
    // Cloth lets part of the ray go on straight; panes and mirrors turn it or let it go on.
    Direction onward = rest.direction;
    if (wide) {
      weight *= straight_transmittance(vertex->material, 1.0);
    } else {
      const Numbers4 u = numbers.group(kTurnGroup + turn);
      const auto drawn = draw_scattering(vertex->material, vertex->frame.to_local(-rest.direction), u);
      if (!drawn) return;
      weight *= drawn->weight;
      if (drawn->turn != Turn::straight) via = via_of_object(vertex->object);
      onward = vertex->frame.to_world(drawn->to_source);
      if (turn >= kTurnsBeforeRoulette) {
        const double survives = std::min(1.0, drawn->weight.maxCoeff());
        if (u[3] >= survives) return;
        weight /= survives;
      }
    }
    if (weight.maxCoeff() <= 0.0) return;
    rest = leaving(vertex->position, vertex->frame.normal, onward);
  }
}

}  // namespace fillside
