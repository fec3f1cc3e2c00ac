#include "libsim/transport/gather.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "libsim/transport/runs_in.h"
#include "libsim/transport/walk.h"

namespace fillside {
namespace {

// Padded groups: one for each thing that is drawn, so that no two share their numbers.
constexpr std::uint32_t kEmitterGroup = kFirstGatherGroup;
constexpr std::uint32_t kRestGroup = kFirstGatherGroup + 256;
constexpr std::uint32_t kTargetGroup = kFirstGatherGroup + 257;  // of each target's own numbers
constexpr std::uint32_t kRestWalk = kGroupsOfAWalk;
constexpr std::uint32_t kPaneWalk = 2 * kGroupsOfAWalk;  // and the following, one for each thing passed
constexpr std::uint32_t kTargetWalk = 64 * kGroupsOfAWalk;
constexpr int kMostPassed = 60;

}  // namespace

/// Some samples at one receiver.
struct Gatherer::Batch {
  Gatherer& gatherer;
  const SampleNumbers& first;
  std::uint32_t count;
  const Receiver& receiver;
  const Rgb& weight;
  Ledger& ledger;
  const GatherContext& context = gatherer.context_;
  const Scene& scene = context.scene;

  void add_emitter(std::size_t emitter) const;
  void add_target(std::size_t target) const;
  void add_rest(const SampleNumbers& own) const;
  SampleNumbers numbers(std::uint32_t i) const { return first.with_sample(first.sample() + i); }

 private:
  void add_seen(std::size_t emitter, std::span<const SeenEmitter> seen) const;
  void add_seen(std::size_t emitter, const SeenEmitter& seen, const Ray& ray, bool blocked) const;
  void add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& walk_weight,
                const SampleNumbers& walk_numbers, std::uint32_t first_group,
                FirstVertex turned = FirstVertex::turned_only) const;
  bool is_own_part(const Surface& surface) const;
};

void Gatherer::Batch::add_emitter(std::size_t e) const {
  const NumberGroup group = first.shared(kEmitterGroup + static_cast<std::uint32_t>(e));
  const SeenShape& shape = gatherer.emitters_[e];
  std::array<SeenEmitter, kMostRaysTogether> drawn;
  std::size_t seen = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const Numbers2 u = group.pair(first.sample() + i);
    if (const auto one = draw_emitter(scene, e, shape, receiver.position, u[0], u[1])) drawn[seen++] = *one;
  }
  add_seen(e, std::span(drawn).first(seen));
  if (!scene.sun()) return;
  seen = 0;
  for (std::uint32_t i = 0; i < count; ++i) {
    const Numbers4 u = group.numbers(first.sample() + i);
    if (const auto one = draw_sun(scene, e, receiver.position, u[2], u[3])) drawn[seen++] = *one;
  }
  add_seen(e, std::span(drawn).first(seen));
}

void Gatherer::Batch::add_seen(std::size_t e, std::span<const SeenEmitter> seen) const {
  std::array<Ray, kMostRaysTogether> rays;
  for (std::size_t i = 0; i < seen.size(); ++i)
    rays[i] = shadow_ray(receiver.position, receiver.normal, seen[i].point);
  const std::uint32_t blocked =
      scene.caster().blocked(std::span(rays).first(seen.size()), context.mask & kAllOpaque);
  for (std::size_t i = 0; i < seen.size(); ++i) add_seen(e, seen[i], rays[i], (blocked >> i) & 1u);
}

void Gatherer::Batch::add_seen(std::size_t e, const SeenEmitter& seen, const Ray& ray, bool blocked) const {
  const Rgb counted = weight * response(receiver, seen.to_source) / seen.density_per_sr;
  if (counted.maxCoeff() <= 0.0) return;
  const Rgb unshadowed =
      scene.has_see_through() ? Rgb(counted * see_through_passage(scene, ray, context.mask)) : counted;
  // What the wall itself hides is no shadow of anything in the set.
  const auto* opening = std::get_if<Opening>(&scene.emitters()[e].kind);
  const bool from_open_wall = !opening || !hidden_by_reveal(*opening, seen.point, receiver.position);
  const std::size_t curtain = via_of_object(scene.emitters()[e].curtain_object);
  const auto add = [&](std::size_t row, const Rgb& straight, const Rgb& spread) {
    if (from_open_wall) ledger.add_unshadowed(row, unshadowed * straight + unshadowed * spread);
    if (blocked) return;
    ledger.add(row, kStraight, unshadowed * straight);
    if (spread.maxCoeff() > 0.0) ledger.add(row, curtain, unshadowed * spread);
  };
  add_by_rows(scene, context.rows, e, seen.emission, seen.to_source, add);
}

void Gatherer::Batch::add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& walk_weight,
                               const SampleNumbers& walk_numbers, std::uint32_t first_group,
                               FirstVertex turned) const {
  if (walk_weight.maxCoeff() <= 0.0) return;
  std::vector<Rgb>& radiance = gatherer.radiance_;
  const std::size_t via = via_of_object(vertex.object);
  std::ranges::fill(radiance, grey(0.0));
  walk({scene, walk_numbers, first_group, context.mask, context.rows, context.kept}, std::move(vertex),
       to_viewer, walk_weight, turned, radiance);
  for (std::size_t source = 0; source < radiance.size(); ++source)
    if (radiance[source].maxCoeff() > 0.0) ledger.add(source, via, radiance[source]);
}

void Gatherer::Batch::add_target(std::size_t t) const {
  const Target& target = scene.targets()[t];
  const Surface& surface = scene.surfaces()[target.surface];
  const SphericalRectangle& seen = gatherer.targets_[t];
  if (!seen.visible() || (scene.objects()[surface.object].subject && context.mask == kWithoutSubject)) return;
  const SampleNumbers own = first.apart(target.numbers_key);
  const NumberGroup group = own.shared(kTargetGroup);
  std::array<SphericalRectangle::Seen, kMostRaysTogether> drawn;
  std::array<Ray, kMostRaysTogether> rays;
  for (std::uint32_t i = 0; i < count; ++i) {
    const Numbers2 u = group.pair(first.sample() + i);
    drawn[i] = seen.draw(u[0], u[1]);
    rays[i] = shadow_ray(receiver.position, receiver.normal, drawn[i].point);
  }
  const std::uint32_t blocked =
      scene.caster().blocked(std::span(rays).first(count), context.mask & kAllOpaque);
  for (std::uint32_t i = 0; i < count; ++i) {
    if ((blocked >> i) & 1u) continue;
    const Eigen::Vector3d way = drawn[i].point - receiver.position;
    const double distance_m = way.norm();
    const Direction to_target = way / distance_m;
    Rgb counted = weight * response(receiver, to_target) / drawn[i].density_per_sr;
    if (counted.maxCoeff() <= 0.0) continue;
    if (scene.has_see_through()) counted *= see_through_passage(scene, rays[i], context.mask);
    add_walk(
        {drawn[i].point, frame_around(target.rectangle.normal()), material_at(surface, {drawn[i].point}),
         surface.object, context.kept.cell_at(scene, target.surface, drawn[i].point, distance_m, to_target)},
        -to_target, counted, own.with_sample(first.sample() + i), kTargetWalk);
  }
}

/// True for a surface that add_target has taken from here already.
bool Gatherer::Batch::is_own_part(const Surface& surface) const {
  return surface.target != kNone && gatherer.targets_[static_cast<std::size_t>(surface.target)].visible();
}

void Gatherer::Batch::add_rest(const SampleNumbers& own) const {
  const auto drawn = draw_response(receiver, own.group(kRestGroup));
  if (!drawn) return;
  const Direction to_hit = drawn->to_source;
  Rgb left = weight * drawn->weight;
  Ray ray = leaving(receiver.position, receiver.normal, to_hit);
  RunsIn medium;
  for (std::uint32_t passed = 0; passed < kMostPassed; ++passed) {
    // 1. The next surface in the drawn direction.
    const auto hit = scene.caster().first_hit(ray, context.mask);
    if (!hit) return;
    const Surface& surface = scene.surfaces()[hit->surface];
    left *= medium.left_of_the_way(surface.material, *hit, to_hit);
    // 2. A window or lamp: its own light is an own part; what its room face returns is not.
    if (surface.emitter != kNone) {
      auto face = room_face_at(scene, scene.emitters()[static_cast<std::size_t>(surface.emitter)], *hit);
      if (face) add_walk(std::move(*face), -to_hit, left, own, kRestWalk);
      return;
    }
    // 3. What it turns toward the receiver, unless it is a board or cloth with a part of its own.
    const bool through = lets_light_through(surface.material);
    if (!is_own_part(surface)) {
      Vertex vertex = vertex_at(scene, *hit);
      vertex.cell = context.kept.cell_of(*hit, to_hit);
      add_walk(std::move(vertex), -to_hit, left, own,
               through ? kPaneWalk + passed * kGroupsOfAWalk : kRestWalk,
               passed > 0 ? FirstVertex::turned_after_straight : FirstVertex::turned_only);
    }
    if (!through) return;
    // 4. What passes a pane or cloth straight goes on.
    left *= straight_transmittance(surface.material, std::abs(to_hit.dot(hit->normal)));
    medium.go_on(surface.material, hit->normal, to_hit);
    if (left.maxCoeff() <= 0.0) return;
    ray = leaving(hit->position, hit->normal, to_hit);
  }
}

Gatherer::Gatherer(const GatherContext& context)
    : context_(context),
      looked_from_(Point::Constant(std::numeric_limits<double>::quiet_NaN())),
      radiance_(row_count(context.scene, context.rows), grey(0.0)) {}

void Gatherer::look_from(const Point& position) {
  if (position == looked_from_) return;
  looked_from_ = position;
  emitters_.clear();
  for (const Emitter& emitter : context_.scene.emitters()) emitters_.push_back(seen_shape(emitter, position));
  targets_.clear();
  for (const Target& target : context_.scene.targets())
    targets_.emplace_back(target.rectangle, position, target.both_sides);
}

void Gatherer::gather(const SampleNumbers& numbers, std::uint32_t count, const Receiver& receiver,
                      const Rgb& weight, Ledger& ledger) {
  look_from(receiver.position);
  const Batch batch{*this, numbers, count, receiver, weight, ledger};
  if (context_.parts & kEmitterPart)
    for (std::size_t e = 0; e < emitters_.size(); ++e) batch.add_emitter(e);
  if (context_.parts & kBoardPart)
    for (std::size_t t = 0; t < targets_.size(); ++t) batch.add_target(t);
  if (context_.parts & kRestPart)
    for (std::uint32_t i = 0; i < count; ++i) batch.add_rest(batch.numbers(i));
}

}  // namespace fillside
