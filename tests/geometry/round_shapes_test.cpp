#include "libsim/geometry/round_shapes.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/nearness.h"

namespace fillside {
namespace {

const Sphere kBall{{0.3, -0.2, 1.1}, 0.15};
const Disc kDisc{{0.3, -0.2, 1.1}, Direction(1, 2, 2) / 3.0, 0.15};

TEST(RoundShapes, a_balls_mesh_is_closed_and_a_little_smaller_never_larger) {
  const Mesh mesh = mesh_of(kBall);
  EXPECT_TRUE(is_watertight(mesh));
  for (const Point& corner : mesh.corners) EXPECT_NEAR((corner - kBall.centre).norm(), 0.15, 1e-12);
  const double whole = 4.0 / 3.0 * kPi * std::pow(0.15, 3);
  EXPECT_LT(volume_m3(mesh), whole);
  EXPECT_GT(volume_m3(mesh), (1.0 - 1e-3) * whole);
  EXPECT_GT(area_m2(mesh), (1.0 - 5e-4) * kBall.area_m2());
}

TEST(RoundShapes, a_discs_mesh_lies_in_its_plane_and_faces_its_way) {
  const Mesh mesh = mesh_of(kDisc);
  Eigen::Vector3d sum = Eigen::Vector3d::Zero();
  for (const Triangle& triangle : mesh.triangles) sum += 0.5 * area_vector(mesh, triangle);
  EXPECT_LT((sum / kDisc.area_m2() - kDisc.normal).norm(), 2e-4);
  for (const Point& corner : mesh.corners) {
    EXPECT_NEAR((corner - kDisc.centre).dot(kDisc.normal), 0.0, 1e-12);
    EXPECT_LE((corner - kDisc.centre).norm(), 0.15 + 1e-12);
  }
}

TEST(RoundShapes, the_square_around_a_disc_just_holds_it) {
  const Rectangle square = square_around(kDisc);
  EXPECT_LT((square.normal() - kDisc.normal).norm(), 1e-12);
  EXPECT_NEAR(square.area_m2(), 0.3 * 0.3, 1e-12);
  EXPECT_TRUE(kDisc.has(square.at(0.99, 0)));
  EXPECT_FALSE(kDisc.has(square.at(0.9, 0.9)));
}

TEST(Nearness, is_measured_to_the_face_an_edge_or_a_corner_whichever_is_nearest) {
  const Mesh mesh{{{0, 0, 0}, {1, 0, 0}, {0, 1, 0}}, {{0, 1, 2}}};
  EXPECT_NEAR(distance_m(mesh, {0.2, 0.2, 0.7}), 0.7, 1e-15);
  EXPECT_NEAR(distance_m(mesh, {0.5, -0.3, 0.4}), 0.5, 1e-15);      // an edge
  EXPECT_NEAR(distance_m(mesh, {1, 1, 0}), std::sqrt(0.5), 1e-15);  // the long edge
  EXPECT_NEAR(distance_m(mesh, {-2, 0.4, 0}), 2.0, 1e-15);          // the third edge
  EXPECT_NEAR(distance_m(mesh, {-2, -2, 1}), 3.0, 1e-15);           // corners
  EXPECT_NEAR(distance_m(mesh, {3, -1, 2}), 3.0, 1e-15);
  EXPECT_NEAR(distance_m(mesh, {0, 3, 0}), 2.0, 1e-15);
  EXPECT_GT(distance_m({}, {0, 0, 0}), 1e29);
}

TEST(Nearness, to_a_fine_ball_is_that_to_the_ball) {
  EXPECT_NEAR(distance_m(mesh_of(kBall), {1.3, -0.2, 1.1}), 0.85, 1e-4);
}

}  // namespace
}  // namespace fillside
