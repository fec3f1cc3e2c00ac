#include "libsim/transport/gather.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "libsim/transport/runs_in.h"

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

/// Ends a walk at a cell that the store knows.
void add_kept(const KeptLight& kept, int replicate, std::uint32_t cell, const Rgb& weight, std::size_t via,
              Ledger& ledger) {
  const std::span<const float> rgb = kept.radiance(replicate, cell);
  for (std::size_t source = 0; 3 * source < rgb.size(); ++source)
    ledger.add(source, via, weight * Rgb(rgb[3 * source], rgb[3 * source + 1], rgb[3 * source + 2]));
}

}  // namespace

/// Some samples at one receiver.
struct Gatherer::Batch {
  Gatherer& gatherer;
  const GatherSamples& samples;
  const GatherContext& context = gatherer.context_;
  const Scene& scene = context.scene;
  const Receiver& receiver = samples.receiver;

  void add_emitter(std::size_t emitter) const;
  void add_target(std::size_t target) const;
  void add_rest(const SampleNumbers& own) const;
  SampleNumbers numbers(std::uint32_t i) const {
    return samples.first.with_sample(samples.first.sample() + i);
  }

 private:
  void send(std::size_t emitter, const SeenEmitter& seen) const;
  void add_walk(const Hit& hit, const Direction& to_hit, const Rgb& weight, const SampleNumbers& own,
                std::uint32_t first_group, FirstVertex turned) const;
  bool is_own_part(const Surface& surface) const;
};

void Gatherer::Batch::add_emitter(std::size_t e) const {
  const NumberGroup group = samples.first.shared(kEmitterGroup + static_cast<std::uint32_t>(e));
  const SeenShape& shape = gatherer.emitters_[e];
  for (std::uint32_t i = 0; i < samples.count; ++i) {
    const Numbers2 u = group.pair(samples.first.sample() + i);
    if (const auto seen = draw_emitter(scene, e, shape, receiver.position, u[0], u[1])) send(e, *seen);
  }
  if (!scene.sun()) return;
  for (std::uint32_t i = 0; i < samples.count; ++i) {
    const Numbers4 u = group.numbers(samples.first.sample() + i);
    if (const auto seen = draw_sun(scene, e, receiver.position, u[2], u[3])) send(e, *seen);
  }
}

void Gatherer::Batch::send(std::size_t e, const SeenEmitter& seen) const {
  const Rgb counted = samples.weight * response(receiver, seen.to_source) / seen.density_per_sr;
  if (counted.maxCoeff() <= 0.0) return;
  // What the wall itself hides is no shadow of anything in the set.
  const auto* opening = std::get_if<Opening>(&scene.emitters()[e].kind);
  const bool from_open_wall = !opening || !hidden_by_reveal(*opening, seen.point, receiver.position);
  gatherer.send({shadow_ray(receiver.position, receiver.normal, seen.point), seen.to_source, counted,
                 &samples.ledger, TowardEmitter{e, seen.emission, from_open_wall}});
}

void Gatherer::arrive(const Waiting& ray, const TowardEmitter& goal, bool blocked) {
  const Scene& scene = context_.scene;
  const Rgb unshadowed = scene.has_see_through()
                             ? Rgb(ray.counted * see_through_passage(scene, ray.ray, context_.mask))
                             : ray.counted;
  const std::size_t curtain = via_of_object(scene.emitters()[goal.emitter].curtain_object);
  const auto add = [&](std::size_t row, const Rgb& straight, const Rgb& spread) {
    if (goal.from_open_wall) ray.ledger->add_unshadowed(row, unshadowed * straight + unshadowed * spread);
    if (blocked) return;
    ray.ledger->add(row, kStraight, unshadowed * straight);
    if (spread.maxCoeff() > 0.0) ray.ledger->add(row, curtain, unshadowed * spread);
  };
  add_by_rows(scene, context_.rows, goal.emitter, goal.emission, ray.to_source, add);
}

void Gatherer::Batch::add_target(std::size_t t) const {
  const Target& target = scene.targets()[t];
  const Surface& surface = scene.surfaces()[target.surface];
  const SphericalRectangle& seen = gatherer.targets_[t];
  if (!seen.visible() || (scene.objects()[surface.object].subject && context.mask == kWithoutSubject)) return;
  const SampleNumbers own = samples.first.apart(target.numbers_key);
  const NumberGroup group = own.shared(kTargetGroup);
  for (std::uint32_t i = 0; i < samples.count; ++i) {
    const std::uint32_t sample = samples.first.sample() + i;
    const Numbers2 u = group.pair(sample);
    const auto [point, density_per_sr] = seen.draw(u[0], u[1]);
    const Eigen::Vector3d way = point - receiver.position;
    const double distance_m = way.norm();
    const Direction to_target = way / distance_m;
    const Rgb counted = samples.weight * response(receiver, to_target) / density_per_sr;
    if (counted.maxCoeff() <= 0.0) continue;
    gatherer.send({shadow_ray(receiver.position, receiver.normal, point), to_target, counted, &samples.ledger,
                   TowardTarget{t, point, distance_m, own.with_sample(sample), samples.kept_replicate}});
  }
}

void Gatherer::arrive(const Waiting& ray, const TowardTarget& goal, bool blocked) {
  if (blocked) return;
  const Scene& scene = context_.scene;
  const Target& target = scene.targets()[goal.target];
  const Surface& surface = scene.surfaces()[target.surface];
  Rgb counted = ray.counted;
  if (scene.has_see_through()) counted *= see_through_passage(scene, ray.ray, context_.mask);
  const KeptReplicate kept{context_.kept, goal.kept_replicate};
  const std::uint32_t cell = kept.cell_at(scene, target.surface, goal.point, goal.distance_m, ray.to_source);
  if (cell != SurfaceCells::kNone)
    return add_kept(*context_.kept, goal.kept_replicate, cell, counted, via_of_object(surface.object),
                    *ray.ledger);
  add_walk({goal.point, frame_around(target.rectangle.normal()), material_at(surface, {goal.point}),
            surface.object},
           -ray.to_source, counted, goal.numbers, kTargetWalk, FirstVertex::turned_only, goal.kept_replicate,
           *ray.ledger);
}

void Gatherer::send(Waiting&& waiting) {
  waiting_.push_back(std::move(waiting));
  if (waiting_.size() == kMostRaysTogether) finish();
}

void Gatherer::finish() {
  std::array<Ray, kMostRaysTogether> rays;
  for (std::size_t i = 0; i < waiting_.size(); ++i) rays[i] = waiting_[i].ray;
  const std::uint32_t blocked =
      context_.scene.caster().blocked(std::span(rays).first(waiting_.size()), context_.mask & kAllOpaque);
  for (std::size_t i = 0; i < waiting_.size(); ++i)
    std::visit([&](const auto& goal) { arrive(waiting_[i], goal, (blocked >> i) & 1u); }, waiting_[i].goal);
  waiting_.clear();
}

void Gatherer::add_walk(Vertex vertex, const Direction& to_viewer, const Rgb& weight,
                        const SampleNumbers& numbers, std::uint32_t first_group, FirstVertex turned,
                        int kept_replicate, Ledger& ledger) {
  if (weight.maxCoeff() <= 0.0) return;
  const std::size_t via = via_of_object(vertex.object);
  std::ranges::fill(radiance_, grey(0.0));
  walk({context_.scene, numbers, first_group, context_.mask, context_.rows, {context_.kept, kept_replicate}},
       std::move(vertex), to_viewer, weight, turned, radiance_);
  for (std::size_t source = 0; source < radiance_.size(); ++source)
    if (radiance_[source].maxCoeff() > 0.0) ledger.add(source, via, radiance_[source]);
}

/// True for a surface that add_target has taken from here already.
bool Gatherer::Batch::is_own_part(const Surface& surface) const {
  return surface.target != kNone && gatherer.targets_[static_cast<std::size_t>(surface.target)].visible();
}

/// What a surface that was hit turns toward the receiver.
void Gatherer::Batch::add_walk(const Hit& hit, const Direction& to_hit, const Rgb& weight,
                               const SampleNumbers& own, std::uint32_t first_group,
                               FirstVertex turned) const {
  const KeptReplicate kept{context.kept, samples.kept_replicate};
  const std::uint32_t cell = kept.cell_of(hit, to_hit);
  if (cell != SurfaceCells::kNone)
    return add_kept(*context.kept, samples.kept_replicate, cell, weight,
                    via_of_object(scene.surfaces()[hit.surface].object), samples.ledger);
  gatherer.add_walk(vertex_at(scene, hit), -to_hit, weight, own, first_group, turned, samples.kept_replicate,
                    samples.ledger);
}

void Gatherer::Batch::add_rest(const SampleNumbers& own) const {
  const auto drawn = draw_response(receiver, own.group(kRestGroup));
  if (!drawn) return;
  const Direction to_hit = drawn->to_source;
  Rgb left = samples.weight * drawn->weight;
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
      if (face)
        gatherer.add_walk(std::move(*face), -to_hit, left, own, kRestWalk, FirstVertex::turned_only,
                          samples.kept_replicate, samples.ledger);
      return;
    }
    // 3. What it turns toward the receiver, unless it is a board or cloth with a part of its own.
    const bool through = lets_light_through(surface.material);
    if (!is_own_part(surface))
      add_walk(*hit, to_hit, left, own, through ? kPaneWalk + passed * kGroupsOfAWalk : kRestWalk,
               passed > 0 ? FirstVertex::turned_after_straight : FirstVertex::turned_only);
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
      radiance_(row_count(context.scene, context.rows), grey(0.0)) {
  waiting_.reserve(kMostRaysTogether);
}

void Gatherer::look_from(const Point& position) {
  if (position == looked_from_) return;
  looked_from_ = position;
  emitters_.clear();
  for (const Emitter& emitter : context_.scene.emitters()) emitters_.push_back(seen_shape(emitter, position));
  targets_.clear();
  for (const Target& target : context_.scene.targets())
    targets_.emplace_back(target.rectangle, position, target.both_sides);
}

void Gatherer::gather(const GatherSamples& samples) {
  look_from(samples.receiver.position);
  const Batch batch{*this, samples};
  if (context_.parts & kEmitterPart)
    for (std::size_t e = 0; e < emitters_.size(); ++e) batch.add_emitter(e);
  if (context_.parts & kBoardPart)
    for (std::size_t t = 0; t < targets_.size(); ++t) batch.add_target(t);
  if (context_.parts & kRestPart)
    for (std::uint32_t i = 0; i < samples.count; ++i) batch.add_rest(batch.numbers(i));
}

}  // namespace fillside
