// Balls: the six faces of a cube, each cut to cells, blown up to a sphere; whole, or with a square port.
#pragma once

#include <array>
#include <cmath>
#include <vector>

#include "libsim/geometry/rectangle.h"

namespace fillside::tests {

/// A patch of the cube [-1, 1]^3 on the face toward `axis`, blown up to the unit sphere; cells between the
/// cuts.
inline Mesh sphere_patch(const Direction& u, const Direction& v, const std::vector<double>& us,
                         const std::vector<double>& vs) {
  Mesh mesh;
  const Direction axis = u.cross(v);
  for (const double b : vs)
    for (const double a : us) mesh.corners.push_back((axis + a * u + b * v).normalized());
  const auto across = static_cast<std::uint32_t>(us.size());
  for (std::uint32_t j = 0; j + 1 < vs.size(); ++j)
    for (std::uint32_t i = 0; i + 1 < across; ++i) {
      const std::uint32_t corner = j * across + i;
      mesh.triangles.push_back({corner, corner + 1, corner + across + 1});
      mesh.triangles.push_back({corner, corner + across + 1, corner + across});
    }
  return mesh;
}

/// Cuts from `low` to `high`, even in angle.
inline std::vector<double> cuts_between(double low, double high, int cells) {
  std::vector<double> cuts;
  for (int i = 0; i <= cells; ++i)
    cuts.push_back(std::tan(std::atan(low) + (std::atan(high) - std::atan(low)) * i / cells));
  return cuts;
}

inline const std::array<std::array<Direction, 2>, 6>& cube_faces() {
  static const Direction x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};
  static const std::array<std::array<Direction, 2>, 6> faces{
      {{x, y}, {y, x}, {y, z}, {z, y}, {z, x}, {x, z}}};
  return faces;
}

/// Facing outward; `cells` along each side of a cube's face.
inline Mesh sphere_mesh(const Point& centre, double radius_m, int cells) {
  Mesh mesh;
  for (const auto& [u, v] : cube_faces())
    append(mesh, sphere_patch(u, v, cuts_between(-1, 1, cells), cuts_between(-1, 1, cells)));
  for (Point& corner : mesh.corners) corner = centre + radius_m * corner;
  return mesh;
}

struct PortedSphere {
  Mesh wall;
  Rectangle port;  ///< flat, spanned by the corners of the gap in the wall on top; faces into the sphere
};

/// A sphere around the origin whose wall lacks the share `port_share` of it on top: the square |x|, |y| <= a
/// on the cube's upper face, with tan(pi f) = a^2 / sqrt(1 + 2 a^2) by the solid angle of a rectangle
/// straight ahead (from memory). `cells` along each third of a face.
inline PortedSphere sphere_with_port(double radius_m, double port_share, int cells) {
  const double t = std::tan(kPi * port_share), a = std::sqrt(t * t + t * std::sqrt(t * t + 1.0));
  PortedSphere sphere;
  // The same cuts on every face, so that faces meet corner to corner and no light slips out between them.
  const auto before = cuts_between(-1, -a, cells), gap = cuts_between(-a, a, cells),
             after = cuts_between(a, 1, cells);
  for (std::size_t face = 0; face < 6; ++face)
    for (const auto* us : {&before, &gap, &after})
      for (const auto* vs : {&before, &gap, &after})
        if (face != 0 || us != &gap || vs != &gap)
          append(sphere.wall, sphere_patch(cube_faces()[face][0], cube_faces()[face][1], *us, *vs));
  for (Point& corner : sphere.wall.corners) corner *= radius_m;
  const double per_unit = radius_m / std::sqrt(1.0 + 2.0 * a * a);
  sphere.port = {{0, 0, per_unit}, {-a * per_unit, 0, 0}, {0, a * per_unit, 0}};
  return sphere;
}

}  // namespace fillside::tests
