#include "libsim/geometry/fewer_triangles.h"

#include <meshoptimizer.h>

#include <limits>

namespace fillside {
namespace {

/// Only the corners that the triangles use.
Mesh without_unused_corners(const Mesh& mesh, const std::vector<unsigned>& indices) {
  constexpr auto kUnused = std::numeric_limits<std::uint32_t>::max();
  std::vector<std::uint32_t> moved_to(mesh.corners.size(), kUnused);
  Mesh made;
  for (std::size_t i = 0; i + 2 < indices.size(); i += 3) {
    Triangle triangle{};
    for (std::size_t k = 0; k < 3; ++k) {
      std::uint32_t& place = moved_to[indices[i + k]];
      if (place == kUnused) {
        place = static_cast<std::uint32_t>(made.corners.size());
        made.corners.push_back(mesh.corners[indices[i + k]]);
      }
      triangle[k] = place;
    }
    made.triangles.push_back(triangle);
  }
  return made;
}

}  // namespace

Mesh with_fewer_triangles(const Mesh& mesh, std::size_t most) {
  if (mesh.triangles.size() <= most) return mesh;
  std::vector<float> places;
  for (const Point& corner : mesh.corners)
    for (int axis = 0; axis < 3; ++axis) places.push_back(static_cast<float>(corner[axis]));
  std::vector<unsigned> indices;
  for (const Triangle& triangle : mesh.triangles)
    indices.insert(indices.end(), triangle.begin(), triangle.end());
  constexpr float kAnyError = 1.0f;  // as a share of the mesh's extent
  std::vector<unsigned> kept(indices.size());
  const auto count_within = [&](auto simplify, auto... more) {
    return simplify(kept.data(), indices.data(), indices.size(), places.data(), mesh.corners.size(),
                    3 * sizeof(float), 3 * most, kAnyError, more..., nullptr);
  };
  std::size_t count = count_within([](auto... all) { return meshopt_simplify(all...); }, 0u);
  if (count > 6 * most)  // its edges are all seams: let go of how it hangs together
    count = count_within([](auto... all) { return meshopt_simplifySloppy(all...); });
  kept.resize(count);
  return without_unused_corners(mesh, kept);
}

}  // namespace fillside
