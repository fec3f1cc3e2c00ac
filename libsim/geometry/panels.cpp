#include "libsim/geometry/panels.h"

#include <algorithm>

namespace fillside {
namespace {

/// Sorted cut positions along one side of the wall, -1..1.
std::vector<double> cuts(const Rectangle& wall, std::span<const Rectangle> holes, int axis) {
  std::vector<double> at{-1.0, 1.0};
  for (const Rectangle& hole : holes)
    for (const double side : {-1.0, 1.0}) {
      const Eigen::Vector2d corner = wall.coordinates_of(hole.at(side, side));
      at.push_back(std::clamp(corner[axis], -1.0, 1.0));
    }
  std::ranges::sort(at);
  at.erase(std::unique(at.begin(), at.end()), at.end());
  return at;
}

bool in_a_hole(const Point& point, std::span<const Rectangle> holes) {
  return std::ranges::any_of(
      holes, [&](const Rectangle& hole) { return hole.coordinates_of(point).cwiseAbs().maxCoeff() < 1.0; });
}

void append_quad(Mesh& mesh, const Point& a, const Point& b, const Point& c, const Point& d) {
  append(mesh, Mesh{{a, b, c, d}, {{0, 1, 2}, {0, 2, 3}}});
}

}  // namespace

Mesh wall_with_holes(const Rectangle& wall, std::span<const Rectangle> holes) {
  const std::vector<double> us = cuts(wall, holes, 0), vs = cuts(wall, holes, 1);
  Mesh mesh;
  for (std::size_t i = 0; i + 1 < us.size(); ++i)
    for (std::size_t j = 0; j + 1 < vs.size(); ++j)
      if (!in_a_hole(wall.at(0.5 * (us[i] + us[i + 1]), 0.5 * (vs[j] + vs[j + 1])), holes))
        append_quad(mesh, wall.at(us[i], vs[j]), wall.at(us[i + 1], vs[j]), wall.at(us[i + 1], vs[j + 1]),
                    wall.at(us[i], vs[j + 1]));
  return mesh;
}

Rectangle back_of(const Rectangle& front, double thickness_m) {
  return {front.centre - thickness_m * front.normal(), -front.half_u, front.half_v};
}

Mesh edges_of_sheet(const Rectangle& front, double thickness_m) {
  const Eigen::Vector3d back = -thickness_m * front.normal();
  const Point corners[] = {front.at(-1, -1), front.at(1, -1), front.at(1, 1), front.at(-1, 1)};
  Mesh mesh;
  for (int i = 0; i < 4; ++i) {
    const Point &a = corners[i], &b = corners[(i + 1) % 4];
    append_quad(mesh, b, a, a + back, b + back);
  }
  return mesh;
}

Mesh box_mesh(const Point& foot, double width_m, double depth_m, double height_m) {
  Mesh mesh;
  for (int i = 0; i < 8; ++i)
    mesh.corners.push_back(
        foot + Point{(i & 1 ? 0.5 : -0.5) * width_m, (i & 2 ? 0.5 : -0.5) * depth_m, i & 4 ? height_m : 0.0});
  mesh.triangles = {{0, 2, 3}, {0, 3, 1}, {4, 5, 7}, {4, 7, 6}, {0, 1, 5}, {0, 5, 4},
                    {2, 6, 7}, {2, 7, 3}, {0, 4, 6}, {0, 6, 2}, {1, 3, 7}, {1, 7, 5}};
  return mesh;
}

}  // namespace fillside
