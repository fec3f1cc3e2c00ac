#include "libsim/geometry/fewer_triangles.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

/// A ball of radius 1 in rings, closed.
Mesh ball(std::uint32_t rings, std::uint32_t around) {
  Mesh mesh;
  mesh.corners.push_back({0, 0, -1});
  for (std::uint32_t ring = 1; ring < rings; ++ring)
    for (std::uint32_t i = 0; i < around; ++i) {
      const double down = kPi * ring / rings, round = 2.0 * kPi * i / around;
      mesh.corners.push_back(
          {std::sin(down) * std::cos(round), std::sin(down) * std::sin(round), -std::cos(down)});
    }
  mesh.corners.push_back({0, 0, 1});
  const auto at = [&](std::uint32_t ring, std::uint32_t i) { return 1 + (ring - 1) * around + i % around; };
  const auto top = static_cast<std::uint32_t>(mesh.corners.size() - 1);
  for (std::uint32_t i = 0; i < around; ++i) {
    mesh.triangles.push_back({0, at(1, i + 1), at(1, i)});
    mesh.triangles.push_back({top, at(rings - 1, i), at(rings - 1, i + 1)});
    for (std::uint32_t ring = 1; ring + 1 < rings; ++ring) {
      mesh.triangles.push_back({at(ring, i), at(ring, i + 1), at(ring + 1, i + 1)});
      mesh.triangles.push_back({at(ring, i), at(ring + 1, i + 1), at(ring + 1, i)});
    }
  }
  return mesh;
}

TEST(FewerTriangles, a_ball_keeps_its_volume_and_its_skin) {
  const Mesh fine = ball(60, 90);
  ASSERT_TRUE(is_watertight(fine));
  const Mesh coarse = with_fewer_triangles(fine, 600);
  EXPECT_LE(coarse.triangles.size(), 700u);
  EXPECT_GE(coarse.triangles.size(), 300u);
  EXPECT_LT(coarse.corners.size(), 400u);
  EXPECT_TRUE(is_watertight(coarse));
  EXPECT_NEAR(volume_m3(coarse), 4.0 / 3.0 * kPi, 0.03 * 4.0 / 3.0 * kPi);
  for (const Point& corner : coarse.corners) EXPECT_NEAR(corner.norm(), 1.0, 0.02);
}

TEST(FewerTriangles, what_is_coarse_already_is_left_alone) {
  const Mesh mesh = ball(4, 6);
  const Mesh same = with_fewer_triangles(mesh, 1000);
  EXPECT_EQ(same.triangles, mesh.triangles);
  EXPECT_EQ(same.corners.size(), mesh.corners.size());
}

}  // namespace
}  // namespace fillside
