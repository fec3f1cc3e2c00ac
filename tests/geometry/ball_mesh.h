// A faceted ball whose corners lie on the sphere, for tests against the sphere's closed forms.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside::tests {

/// `rings` bands from pole to pole, twice as many spokes; closed, facing outward.
inline Mesh ball_mesh(const Point& centre, double radius_m, int rings) {
  const int spokes = 2 * rings;
  Mesh mesh;
  for (int i = 1; i < rings; ++i)
    for (int j = 0; j < spokes; ++j) {
      const double polar = kPi * i / rings, azimuth = 2.0 * kPi * j / spokes;
      mesh.corners.push_back(centre + radius_m * Direction(std::sin(polar) * std::cos(azimuth),
                                                           std::sin(polar) * std::sin(azimuth),
                                                           std::cos(polar)));
    }
  const auto north = static_cast<std::uint32_t>(mesh.corners.size()), south = north + 1;
  mesh.corners.push_back(centre + radius_m * Direction::UnitZ());
  mesh.corners.push_back(centre - radius_m * Direction::UnitZ());
  const auto corner = [&](int ring, int spoke) {
    return static_cast<std::uint32_t>((ring - 1) * spokes + spoke % spokes);
  };
  for (int j = 0; j < spokes; ++j) {
    mesh.triangles.push_back({north, corner(1, j), corner(1, j + 1)});
    mesh.triangles.push_back({south, corner(rings - 1, j + 1), corner(rings - 1, j)});
    for (int i = 1; i + 1 < rings; ++i) {
      mesh.triangles.push_back({corner(i, j), corner(i + 1, j), corner(i + 1, j + 1)});
      mesh.triangles.push_back({corner(i, j), corner(i + 1, j + 1), corner(i, j + 1)});
    }
  }
  return mesh;
}

}  // namespace fillside::tests
