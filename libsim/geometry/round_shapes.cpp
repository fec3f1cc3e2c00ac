#include "libsim/geometry/round_shapes.h"

#include <cmath>

#include "libsim/geometry/lathe.h"

namespace fillside {
namespace {

constexpr int kSegments = 192;  // a multiple of 4, as turned() wants

}  // namespace

Mesh mesh_of(const Sphere& sphere) {
  Profile profile;
  const int rings = kSegments / 2;
  for (int i = 0; i <= rings; ++i) {
    const double angle = kPi * i / rings;
    const bool pole = i == 0 || i == rings;
    profile.push_back({pole ? 0.0 : sphere.radius_m * std::sin(angle), -sphere.radius_m * std::cos(angle)});
  }
  Mesh mesh = turned(profile, {.segments = kSegments});
  for (Point& corner : mesh.corners) corner += sphere.centre;
  return mesh;
}

Mesh mesh_of(const Disc& disc) {
  const Frame frame = frame_around(disc.normal);
  Mesh mesh;
  mesh.corners.push_back(disc.centre);
  for (std::uint32_t i = 0; i < kSegments; ++i) {
    const double angle = 2.0 * kPi * i / kSegments;
    mesh.corners.push_back(disc.centre +
                           disc.radius_m * frame.to_world({std::cos(angle), std::sin(angle), 0.0}));
    mesh.triangles.push_back({0, 1 + i, 1 + (i + 1) % kSegments});
  }
  return mesh;
}

Rectangle square_around(const Disc& disc) {
  const Frame frame = frame_around(disc.normal);
  const Eigen::Vector3d u = disc.radius_m * frame.to_world({1, 0, 0}),
                        v = disc.radius_m * frame.to_world({0, 1, 0});
  return {disc.centre, u, v};
}

}  // namespace fillside
