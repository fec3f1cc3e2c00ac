#include "libsim/geometry/mesh.h"

#include <algorithm>
#include <utility>

namespace fillside {

Bounds bounds_of(const Mesh& mesh) {
  Bounds bounds;
  for (const Point& corner : mesh.corners) bounds.include(corner);
  return bounds;
}

Eigen::Vector3d area_vector(const Mesh& mesh, const Triangle& t) {
  const Point &a = mesh.corners[t[0]], &b = mesh.corners[t[1]], &c = mesh.corners[t[2]];
  return (b - a).cross(c - a);
}

double area_m2(const Mesh& mesh) {
  double area = 0.0;
  for (const Triangle& triangle : mesh.triangles) area += 0.5 * area_vector(mesh, triangle).norm();
  return area;
}

double volume_m3(const Mesh& mesh) {
  double volume = 0.0;
  for (const Triangle& triangle : mesh.triangles)
    volume += area_vector(mesh, triangle).dot(mesh.corners[triangle[0]]) / 6.0;
  return volume;
}

bool is_watertight(const Mesh& mesh) {
  using Edge = std::pair<std::uint32_t, std::uint32_t>;
  std::vector<Edge> edges, reversed;
  for (const Triangle& t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i) {
      edges.emplace_back(t[i], t[(i + 1) % 3]);
      reversed.emplace_back(t[(i + 1) % 3], t[i]);
    }
  std::ranges::sort(edges);
  std::ranges::sort(reversed);
  return !mesh.empty() && edges == reversed && std::ranges::adjacent_find(edges) == edges.end();
}

void append(Mesh& mesh, const Mesh& more) {
  const auto offset = static_cast<std::uint32_t>(mesh.corners.size());
  mesh.corners.insert(mesh.corners.end(), more.corners.begin(), more.corners.end());
  for (const Triangle& t : more.triangles)
    mesh.triangles.push_back({t[0] + offset, t[1] + offset, t[2] + offset});
}

Mesh moved(Mesh mesh, const Placement& placement) {
  for (Point& corner : mesh.corners) corner = placement * corner;
  return mesh;
}

}  // namespace fillside
