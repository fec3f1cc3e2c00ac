#include "libsim/transport/camera_path.h"

#include <cmath>
#include <vector>

#include "libsim/matter/fresnel.h"
#include "libsim/transport/runs_in.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

constexpr int kMostTurns = 64;  // a filled glass takes eight and what goes to and fro in it
constexpr int kTurnsBeforeRoulette = 4;
constexpr int kMostForks = 8;
constexpr double kForkedDownTo = 0.2;  // of what is seen
constexpr int kChoosesTheWay = 2;      // the number by which clear faces choose between mirroring and passing
constexpr std::uint32_t kDraws = 4;    // of the light that a place in the picture gets, for each look at it
constexpr double kFaint = 0.1;         // of what is seen; under it a way's end is not always looked into
constexpr std::uint32_t kFaintGroup = 61 * kGroupsOfAWalk;
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

/// Share of what a clear face sends the viewer that it mirrors; nothing for other materials.
double mirrored_fraction(const Material& face, const Direction& to_viewer) {
  if (const auto* pane = std::get_if<ClearPane>(&face)) {
    const PaneShares shares = pane_shares(*pane, std::abs(to_viewer.z()));
    return shares.mirrored / (shares.mirrored + shares.transmitted);
  }
  if (const auto* media = std::get_if<Dielectric>(&face))
    return face_reflectance(
        medium_toward(*media, -to_viewer.z()).index / medium_toward(*media, to_viewer.z()).index,
        std::abs(to_viewer.z()));
  return 0.0;
}

/// A ray on its way from the lens.
struct Leg {
  Ray ray;
  Rgb weight = grey(1.0);
  std::size_t via = kStraight;
  RunsIn medium = {};
  std::uint32_t turn = 0;
  int forks = 0;           ///< clear faces at which both ways were taken so far
  std::uint32_t name = 1;  ///< a digit in base 2 for each of them
};

class CameraPath {
 public:
  CameraPath(Gatherer& gatherer, const SampleNumbers& numbers, int kept_replicate, Ledger& ledger)
      : gatherer_(gatherer),
        context_(gatherer.context()),
        numbers_(numbers),
        kept_replicate_(kept_replicate),
        ledger_(ledger) {}

  void follow(Leg leg);

 private:
  bool worth_its_rays(Leg& leg) const;
  void add_lobes(const Leg& leg, const Vertex& vertex, const Material& lobe) const;
  bool turned(Leg& leg, const Vertex& vertex, const Material& narrow, const Numbers4& u) const;

  Gatherer& gatherer_;
  const GatherContext& context_;
  const SampleNumbers& numbers_;
  int kept_replicate_;
  Ledger& ledger_;
};

/// Roulette at the end of a way that adds little: a window or lamp on it was taken all the same, but what its
/// end turns to the lens takes as many rays as if it were the whole picture.
bool CameraPath::worth_its_rays(Leg& leg) const {
  const double looks = leg.weight.maxCoeff() / kFaint;
  if (leg.forks == 0 || looks >= 1.0) return true;
  if (numbers_.group(kFaintGroup + leg.turn * (2u << kMostForks) + leg.name)[0] >= looks) return false;
  leg.weight /= looks;
  return true;
}

/// Bare metal is all lobe, and is looked into as often as other surfaces; what a coat mirrors is little,
/// once.
void CameraPath::add_lobes(const Leg& leg, const Vertex& vertex, const Material& lobe) const {
  const std::uint32_t draws = wide_part(vertex.material) ? 1 : kDraws;
  for (std::uint32_t draw = 0; draw < draws; ++draw)
    add_lobe(context_, numbers_.with_sample(numbers_.sample() * draws + draw), kept_replicate_, vertex, lobe,
             -leg.ray.direction, leg.weight / draws, ledger_);
}

/// Sends the leg on from a vertex, by numbers; false when nothing goes on.
bool CameraPath::turned(Leg& leg, const Vertex& vertex, const Material& narrow, const Numbers4& u) const {
  const auto drawn = draw_scattering(narrow, vertex.frame.to_local(-leg.ray.direction), u);
  if (!drawn) return false;
  leg.weight *= drawn->weight;
  if (leg.weight.maxCoeff() <= 0.0) return false;
  if (drawn->turn != Turn::straight) leg.via = via_of_object(vertex.object);
  if (leg.turn >= kTurnsBeforeRoulette) {
    const double survives = std::min(1.0, drawn->weight.maxCoeff());
    if (u[3] >= survives) return false;
    leg.weight /= survives;
  }
  leg.weight *= drawn->concentration;
  const Direction onward = vertex.frame.to_world(drawn->to_source);
  leg.medium.go_on(vertex.material, vertex.frame.normal, onward);
  leg.ray = leaving(vertex.position, vertex.frame.normal, onward);
  ++leg.turn;
  return true;
}

void CameraPath::follow(Leg leg) {
  while (leg.turn < kMostTurns) {
    // 1. The next surface; the light of a window or lamp is taken on the way.
    const auto hit = context_.scene.caster().first_hit(leg.ray, context_.mask);
    if (!hit) return;
    leg.weight *=
        leg.medium.left_of_the_way(context_.scene.surfaces()[hit->surface].material, *hit, leg.ray.direction);
    const auto vertex = arrive(context_, *hit, leg.ray.direction, leg.weight, leg.via, ledger_);
    if (!vertex) return;
    const Direction to_viewer = -leg.ray.direction;
    if (!is_clear(vertex->material) && !worth_its_rays(leg)) return;
    // 2. What it scatters widely is gathered here.
    const SampleNumbers first = numbers_.with_sample(numbers_.sample() * kDraws);
    if (const auto wide = wide_part(vertex->material))
      gatherer_.gather({.first = first,
                        .count = kDraws,
                        .receiver = {vertex->position, vertex->frame.normal, SeenSurface{*wide, to_viewer}},
                        .weight = leg.weight / kDraws,
                        .kept_replicate = kept_replicate_,
                        .ledger = ledger_});
    // 3. The rest is followed: a lobe by a walk, exact mirrors and what goes straight from here.
    const auto narrow = narrow_part(vertex->material);
    if (!narrow) return;
    if (has_lobe(*narrow)) return add_lobes(leg, *vertex, *narrow);
    // 4. Clear faces are followed both ways, each with its share, as long as the way matters: a window that
    // glass mirrors to one part in twenty-five would else be met by one sample in twenty-five, as a bright
    // speck, and one that is seen through it missed by as many, as a dark one.
    Numbers4 u = numbers_.group(kTurnGroup + leg.turn);
    const double mirrored = mirrored_fraction(*narrow, vertex->frame.to_local(to_viewer));
    if (leg.forks < kMostForks && leg.weight.maxCoeff() >= kForkedDownTo && mirrored > 0.0 &&
        mirrored < 1.0) {
      ++leg.forks;
      Leg aside = leg;
      leg.name *= 2;
      aside.name = leg.name + 1;
      aside.weight *= mirrored;
      leg.weight *= 1.0 - mirrored;
      u[kChoosesTheWay] = 0.0;
      if (turned(aside, *vertex, *narrow, u)) follow(aside);
      u[kChoosesTheWay] = 1.0;
    }
    if (!turned(leg, *vertex, *narrow, u)) return;
  }
}

}  // namespace

void add_radiance_along(Gatherer& gatherer, const SampleNumbers& numbers, int kept_replicate, const Ray& ray,
                        Ledger& ledger) {
  CameraPath(gatherer, numbers, kept_replicate, ledger).follow({ray});
}

}  // namespace fillside
