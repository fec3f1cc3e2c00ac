#include "libsim/transport/gather.h"

#include <array>
#include <cmath>

#include "libsim/geometry/spherical_rectangle.h"
#include "libsim/transport/openings.h"
#include "libsim/transport/runs_in.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

// Padded groups: one for each thing that is drawn, so that no two share their numbers.
constexpr std::uint32_t kEmitterGroup = kFirstGatherGroup;
constexpr std::uint32_t kRestGroup = kFirstGatherGroup + 256;
constexpr std::uint32_t kTargetGroup = kFirstGatherGroup + 257;
constexpr std::uint32_t kRestWalk = kGroupsOfAWalk;
constexpr std::uint32_t kPaneWalk = 2 * kGroupsOfAWalk;  // and the following, one for each thing passed
constexpr std::uint32_t kTargetWalk = 64 * kGroupsOfAWalk;
constexpr int kMostPassed = 60;

class Gathering {
 public:
  Gathering(const GatherContext& context, const Receiver& receiver, const Rgb& weight, Ledger& ledger)
      : context_(context),
        scene_(context.scene),
        receiver_(receiver),
        weight_(weight),
        ledger_(ledger),
        radiance_(ledger.source_count(), grey(0.0)) {}

  void add_emitter(std::size_t emitter);
  void add_seen(std::size_t emitter, const SeenEmitter& seen);
  void add_target(std::size_t target);
  void add_rest();

 private:
  void add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& weight, std::uint32_t first_group,
                FirstVertex first);
  bool is_own_part(const Surface& surface) const;

  const GatherContext& context_;
  const Scene& scene_;
  const Receiver& receiver_;
  const Rgb& weight_;
  Ledger& ledger_;
  std::vector<Rgb> radiance_;  ///< scratch of add_walk
};

void Gathering::add_emitter(std::size_t e) {
  const Numbers4 u = context_.numbers.group(kEmitterGroup + static_cast<std::uint32_t>(e));
  if (const auto seen = draw_emitter(scene_, e, receiver_.position, u[0], u[1])) add_seen(e, *seen);
  if (!scene_.sun()) return;
  if (const auto sun = draw_sun(scene_, e, receiver_.position, u[2], u[3])) add_seen(e, *sun);
}

void Gathering::add_seen(std::size_t e, const SeenEmitter& seen) {
  const Rgb weight = weight_ * response(receiver_, seen.to_source) / seen.density_per_sr;
  if (weight.maxCoeff() <= 0.0) return;
  const Ray ray = shadow_ray(receiver_.position, receiver_.normal, seen.point);
  const Rgb unshadowed =
      scene_.has_see_through() ? Rgb(weight * see_through_passage(scene_, ray, context_.mask)) : weight;
  const bool blocked = scene_.caster().blocked(ray, context_.mask & kAllOpaque);
  // What the wall itself hides is no shadow of anything in the set.
  const auto* opening = std::get_if<Opening>(&scene_.emitters()[e].kind);
  const bool from_open_wall = !opening || !hidden_by_reveal(*opening, seen.point, receiver_.position);
  const std::size_t curtain = via_of_object(scene_.emitters()[e].curtain_object);
  const auto add = [&](std::size_t row, const Rgb& straight, const Rgb& spread) {
    if (from_open_wall) ledger_.add_unshadowed(row, unshadowed * straight + unshadowed * spread);
    if (blocked) return;
    ledger_.add(row, kStraight, unshadowed * straight);
    if (spread.maxCoeff() > 0.0) ledger_.add(row, curtain, unshadowed * spread);
  };
  add_by_rows(scene_, context_.rows, e, seen.emission, seen.to_source, add);
}

void Gathering::add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& weight,
                         std::uint32_t first_group, FirstVertex first) {
  if (weight.maxCoeff() <= 0.0) return;
  const std::size_t via = via_of_object(vertex.object);
  std::ranges::fill(radiance_, grey(0.0));
  walk({scene_, context_.numbers, first_group, context_.mask, context_.rows}, std::move(vertex), to_viewer,
       weight, first, radiance_);
  for (std::size_t source = 0; source < radiance_.size(); ++source)
    if (radiance_[source].maxCoeff() > 0.0) ledger_.add(source, via, radiance_[source]);
}

void Gathering::add_target(std::size_t t) {
  const Target& target = scene_.targets()[t];
  const Surface& surface = scene_.surfaces()[target.surface];
  if (scene_.objects()[surface.object].subject && context_.mask == kWithoutSubject) return;
  const SphericalRectangle seen(target.rectangle, receiver_.position, target.both_sides);
  if (!seen.visible()) return;
  const Numbers4 u = context_.numbers.group(kTargetGroup + static_cast<std::uint32_t>(t));
  const auto [point, density] = seen.draw(u[0], u[1]);
  const Direction to_target = (point - receiver_.position).normalized();
  const Rgb weight = weight_ * response(receiver_, to_target) / density;
  if (weight.maxCoeff() <= 0.0) return;
  const Rgb passed = passage(scene_, shadow_ray(receiver_.position, receiver_.normal, point), context_.mask);
  if (passed.maxCoeff() <= 0.0) return;
  add_walk({point, frame_around(target.rectangle.normal()), surface.material, surface.object}, -to_target,
           weight * passed, kTargetWalk + static_cast<std::uint32_t>(t) * kGroupsOfAWalk,
           FirstVertex::turned_only);
}

/// True for a surface that add_target has taken from here already.
bool Gathering::is_own_part(const Surface& surface) const {
  if (surface.target == kNone) return false;
  const Target& target = scene_.targets()[static_cast<std::size_t>(surface.target)];
  return SphericalRectangle(target.rectangle, receiver_.position, target.both_sides).visible();
}

void Gathering::add_rest() {
  const auto drawn = draw_response(receiver_, context_.numbers.group(kRestGroup));
  if (!drawn) return;
  const Direction to_hit = drawn->to_source;
  Rgb weight = weight_ * drawn->weight;
  Ray ray = leaving(receiver_.position, receiver_.normal, to_hit);
  RunsIn medium;
  for (std::uint32_t passed = 0; passed < kMostPassed; ++passed) {
    // 1. The next surface in the drawn direction.
    const auto hit = scene_.caster().first_hit(ray, context_.mask);
    if (!hit) return;
    const Surface& surface = scene_.surfaces()[hit->surface];
    weight *= medium.left_of_the_way(surface.material, *hit, to_hit);
    // 2. A window or lamp: its own light is an own part; what its room face returns is not.
    if (surface.emitter != kNone) {
      auto face = room_face_at(scene_, scene_.emitters()[static_cast<std::size_t>(surface.emitter)], *hit);
      if (face) add_walk(std::move(*face), -to_hit, weight, kRestWalk, FirstVertex::turned_only);
      return;
    }
    // 3. What it turns toward the receiver, unless it is a board or cloth with a part of its own.
    const bool through = lets_light_through(surface.material);
    if (!is_own_part(surface))
      add_walk(vertex_at(scene_, *hit), -to_hit, weight,
               through ? kPaneWalk + passed * kGroupsOfAWalk : kRestWalk, FirstVertex::turned_only);
    if (!through) return;
    // 4. What passes a pane or cloth straight goes on.
    weight *= straight_transmittance(surface.material, std::abs(to_hit.dot(hit->normal)));
    medium.go_on(surface.material, hit->normal, to_hit);
    if (weight.maxCoeff() <= 0.0) return;
    ray = leaving(hit->position, hit->normal, to_hit);
  }
}

}  // namespace

void gather(const GatherContext& context, const Receiver& receiver, const Rgb& weight, Ledger& ledger) {
  Gathering gathering(context, receiver, weight, ledger);
  for (std::size_t e = 0; e < context.scene.emitters().size(); ++e) gathering.add_emitter(e);
  for (std::size_t t = 0; t < context.scene.targets().size(); ++t) gathering.add_target(t);
  gathering.add_rest();
}

}  // namespace fillside
