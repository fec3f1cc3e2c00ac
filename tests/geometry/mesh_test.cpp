#include "libsim/geometry/mesh.h"

#include <gtest/gtest.h>

#include "libsim/geometry/panels.h"

namespace fillside {
namespace {

/// The corner of a cube of side 1 m cut off: three half squares and a triangle of side sqrt 2.
Mesh corner_piece() {
  return {{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}}, {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}}};
}

TEST(Mesh, adds_up_the_area_of_its_triangles) {
  EXPECT_NEAR(area_m2(corner_piece()), 1.5 + 0.5 * std::sqrt(3.0), 1e-12);
  EXPECT_EQ(area_m2(Mesh{}), 0.0);
}

TEST(Mesh, holds_the_volume_that_its_faces_shut_in_wherever_it_stands) {
  EXPECT_NEAR(volume_m3(corner_piece()), 1.0 / 6.0, 1e-12);
  const Placement placement = Eigen::Translation3d(3, -2, 5) * Eigen::AngleAxisd(1.1, Direction(0.6, 0, 0.8));
  EXPECT_NEAR(volume_m3(moved(corner_piece(), placement)), 1.0 / 6.0, 1e-12);
}

TEST(Mesh, turned_inside_out_has_negative_volume) {
  Mesh mesh = corner_piece();
  for (Triangle& t : mesh.triangles) std::swap(t[1], t[2]);
  EXPECT_NEAR(volume_m3(mesh), -1.0 / 6.0, 1e-12);
}

TEST(AreaVector, points_outward_with_twice_the_area) {
  const Mesh mesh = corner_piece();
  EXPECT_LT((area_vector(mesh, mesh.triangles[0]) - Eigen::Vector3d(0, 0, -1)).norm(), 1e-12);
  EXPECT_LT((area_vector(mesh, mesh.triangles[3]) - Eigen::Vector3d(1, 1, 1)).norm(), 1e-12);
}

TEST(IsWatertight, holds_for_a_closed_mesh_and_not_with_one_triangle_gone) {
  Mesh mesh = corner_piece();
  EXPECT_TRUE(is_watertight(mesh));
  mesh.triangles.pop_back();
  EXPECT_FALSE(is_watertight(mesh));
  EXPECT_FALSE(is_watertight(Mesh{}));
}

TEST(IsWatertight, fails_where_one_triangle_is_turned_over_or_there_twice) {
  Mesh turned = corner_piece(), doubled = corner_piece();
  std::swap(turned.triangles[3][0], turned.triangles[3][1]);
  EXPECT_FALSE(is_watertight(turned));
  doubled.triangles.push_back(doubled.triangles[3]);
  EXPECT_FALSE(is_watertight(doubled));
}

TEST(IsWatertight, holds_for_two_closed_meshes_appended) {
  Mesh mesh = corner_piece();
  append(mesh, box_mesh({2, 0, 0}, 1, 1, 1));
  EXPECT_TRUE(is_watertight(mesh));
  EXPECT_EQ(mesh.corners.size(), 12u);
  EXPECT_NEAR(volume_m3(mesh), 1.0 / 6.0 + 1.0, 1e-12);
}

TEST(BoundsOf, a_moved_mesh_move_with_it) {
  const Mesh mesh = moved(corner_piece(), Placement(Eigen::Translation3d(1, 2, 3)));
  EXPECT_EQ(bounds_of(mesh).low, Point(1, 2, 3));
  EXPECT_EQ(bounds_of(mesh).high, Point(2, 3, 4));
}

}  // namespace
}  // namespace fillside
