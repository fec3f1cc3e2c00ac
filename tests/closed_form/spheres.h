// Balls: whole, or with a round port on top.
#pragma once

#include <cmath>

#include "libsim/geometry/rectangle.h"

namespace fillside::tests {

/// What of a sphere lies more than `from_angle` off its top, cut to rings and spokes; facing outward.
inline Mesh sphere_mesh(const Point& centre, double radius_m, int rings, double from_angle = 0.0) {
  Mesh mesh;
  const auto spokes = static_cast<std::uint32_t>(2 * rings);
  for (int ring = 0; ring <= rings; ++ring) {
    const double polar = from_angle + (kPi - from_angle) * ring / rings;
    for (std::uint32_t spoke = 0; spoke < spokes; ++spoke) {
      const double turn = 2.0 * kPi * spoke / spokes;
      const Direction out{std::sin(polar) * std::cos(turn), std::sin(polar) * std::sin(turn),
                          std::cos(polar)};
      mesh.corners.push_back(centre + radius_m * out);
    }
  }
  for (std::uint32_t ring = 0; ring < static_cast<std::uint32_t>(rings); ++ring)
    for (std::uint32_t spoke = 0; spoke < spokes; ++spoke) {
      const std::uint32_t next = (spoke + 1) % spokes, above = ring * spokes, below = above + spokes;
      const bool at_top = ring == 0 && from_angle == 0.0,
                 at_bottom = ring + 1 == static_cast<std::uint32_t>(rings);
      if (!at_bottom) mesh.triangles.push_back({above + spoke, below + spoke, below + next});
      if (!at_top)
        mesh.triangles.push_back({above + spoke, at_bottom ? below + spoke : below + next, above + next});
    }
  return mesh;
}

struct PortedSphere {
  Mesh wall;
  double port_area_m2;
  Rectangle outside;  ///< over the hole, a little off it: as good as all that can be seen through it
};

/// A sphere around the origin that lacks a cap with the share `port_share` of its surface: height 2 R f
/// (Archimedes).
inline PortedSphere sphere_with_port(double radius_m, double port_share, int rings) {
  const double cosine = 1.0 - 2.0 * port_share, hole_m = radius_m * std::sqrt(1.0 - cosine * cosine);
  const Point over{0, 0, (cosine + 0.01) * radius_m};
  return {sphere_mesh(Point::Zero(), radius_m, rings, std::acos(cosine)),
          kPi * hole_m * hole_m,
          {over, {-hole_m - 0.4 * radius_m, 0, 0}, {0, hole_m + 0.4 * radius_m, 0}}};
}

}  // namespace fillside::tests
