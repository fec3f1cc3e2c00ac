// One light sample followed backwards: from a surface that sends light to a receiver, to where that light
// came from.
#pragma once

#include <span>

#include "libsim/base/sample_numbers.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/kept_light.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

/// A place on a surface, with what is needed to scatter light there.
struct Vertex {
  Point position;
  Frame frame;  ///< around the geometric normal
  Material material;
  std::uint16_t object = 0;
  std::uint32_t cell = SurfaceCells::kNone;  ///< of the store that knows what leaves here (cached mode)
};

Vertex vertex_at(const Scene& scene, const Hit& hit);
/// The room face of an emitter that was hit; nothing when the ray leaves the room through it.
std::optional<Vertex> room_face_at(const Scene& scene, const Emitter& emitter, const Hit& hit);

/// What a walk needs to know beside its vertex.
struct WalkContext {
  const Scene& scene;
  const SampleNumbers& numbers;
  std::uint32_t first_group;  ///< of the padded groups this walk may use; kGroupsOfAWalk of them
  std::uint32_t mask;         ///< which surfaces there are
  RowsBy rows = RowsBy::source;
  KeptReplicate kept = {};  ///< cached mode: where walks may end early
};
inline constexpr std::uint32_t kGroupsOfAWalk = 1u << 20;

/// Whether light that passes the first vertex without turning counts (a receiver takes that part on its own
/// way).
enum class FirstVertex {
  everything,
  turned_only,
  turned_after_straight  ///< the same, at the end of a way that came straight, unbent, through other faces
};

/// Adds to radiance[row] (one for each source, as a rule) the radiance that leaves the vertex toward the
/// viewer (world direction away from it), times `weight`.
void walk(const WalkContext& context, Vertex vertex, const Direction& to_viewer, const Rgb& weight,
          FirstVertex first, std::span<Rgb> radiance);

}  // namespace fillside
