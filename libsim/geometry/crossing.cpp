#include "libsim/geometry/crossing.h"

#include <algorithm>
#include <array>
#include <optional>

namespace fillside {
namespace {

/// Where a segment passes through a plane from one side to the other.
std::optional<Point> passage(const Point& from, const Point& to, const Point& in_plane,
                             const Eigen::Vector3d& normal) {
  const double before = (from - in_plane).dot(normal), behind = (to - in_plane).dot(normal);
  if (before * behind >= 0.0) return std::nullopt;
  return Point(from + before / (before - behind) * (to - from));
}

bool passes(const Point& from, const Point& to, const Rectangle& rectangle, const Direction& normal) {
  const auto at = passage(from, to, rectangle.centre, normal);
  return at && rectangle.coordinates_of(*at).cwiseAbs().maxCoeff() <= 1.0;
}

bool passes(const Point& from, const Point& to, const std::array<Point, 3>& triangle) {
  const Eigen::Vector3d normal = (triangle[1] - triangle[0]).cross(triangle[2] - triangle[0]);
  const auto at = passage(from, to, triangle[0], normal);
  if (!at) return false;
  for (std::size_t i = 0; i < 3; ++i)
    if ((triangle[(i + 1) % 3] - triangle[i]).cross(*at - triangle[i]).dot(normal) < 0.0) return false;
  return true;
}

std::array<Point, 4> outline_of(const Rectangle& r) {
  return {r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)};
}

/// True when all corners lie on one side of the rectangle or of the box around it: most of a mesh.
bool clearly_apart(const std::array<Point, 3>& triangle, const Rectangle& rectangle, const Bounds& box,
                   const Direction& normal) {
  const Point low = triangle[0].cwiseMin(triangle[1]).cwiseMin(triangle[2]);
  const Point high = triangle[0].cwiseMax(triangle[1]).cwiseMax(triangle[2]);
  if ((low.array() > box.high.array()).any() || (high.array() < box.low.array()).any()) return true;
  const auto side = [&](const Point& corner) { return (corner - rectangle.centre).dot(normal); };
  const auto [least, most] = std::minmax({side(triangle[0]), side(triangle[1]), side(triangle[2])});
  return least >= 0.0 || most <= 0.0;
}

}  // namespace

bool crosses(const Rectangle& rectangle, const Mesh& mesh) {
  const auto outline = outline_of(rectangle);
  const Direction normal = rectangle.normal();
  Bounds box;
  for (const Point& corner : outline) box.include(corner);
  return std::ranges::any_of(mesh.triangles, [&](const Triangle& t) {
    const std::array triangle{mesh.corners[t[0]], mesh.corners[t[1]], mesh.corners[t[2]]};
    if (clearly_apart(triangle, rectangle, box, normal)) return false;
    for (std::size_t i = 0; i < 3; ++i)
      if (passes(triangle[i], triangle[(i + 1) % 3], rectangle, normal)) return true;
    for (std::size_t i = 0; i < 4; ++i)
      if (passes(outline[i], outline[(i + 1) % 4], triangle)) return true;
    return false;
  });
}

bool crosses(const Rectangle& one, const Rectangle& other) { return crosses(one, mesh_of(other)); }

Rectangle shrunk(const Rectangle& rectangle, double margin_m) {
  const auto cut = [&](const Eigen::Vector3d& half) {
    return Eigen::Vector3d(half * std::max(0.1, 1.0 - margin_m / half.norm()));
  };
  return {rectangle.centre, cut(rectangle.half_u), cut(rectangle.half_v)};
}

}  // namespace fillside
