#include "libsim/geometry/rectangle.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "tests/base/dice.h"

namespace fillside {
namespace {

const Rectangle kTilted{
    {0.3, -0.2, 1.1}, {0.3, 0.4, 0.0}, {0.0, 0.0, 0.7}};  // a wall at an angle, 1 m x 1.4 m

TEST(Rectangle, faces_where_u_turned_into_v_points) {
  EXPECT_LT((kTilted.normal() - Direction(0.8, -0.6, 0.0)).norm(), 1e-12);
  EXPECT_LT((Rectangle{}.normal() - Direction(0, 0, 1)).norm(), 1e-12);
}

TEST(Rectangle, has_width_times_height_of_area) { EXPECT_NEAR(kTilted.area_m2(), 1.4, 1e-12); }

TEST(Rectangle, has_its_corners_at_plus_and_minus_one) {
  EXPECT_LT((kTilted.at(1, -1) - Point(0.6, 0.2, 0.4)).norm(), 1e-12);
  EXPECT_EQ(kTilted.at(0, 0), kTilted.centre);
}

RC_GTEST_PROP(Rectangle, finds_the_coordinates_of_any_point_in_it_and_above_it, (int a, int b, int c)) {
  const double u = a * 0x1p-31, v = b * 0x1p-31, above_m = c * 0x1p-30;
  const Eigen::Vector2d found = kTilted.coordinates_of(kTilted.at(u, v) + above_m * kTilted.normal());
  RC_ASSERT(std::abs(found.x() - u) < 1e-12);
  RC_ASSERT(std::abs(found.y() - v) < 1e-12);
}

TEST(MeshOfRectangle, covers_it_and_faces_its_front) {
  const Mesh mesh = mesh_of(kTilted);
  EXPECT_NEAR(area_m2(mesh), kTilted.area_m2(), 1e-12);
  for (const Triangle& triangle : mesh.triangles)
    EXPECT_LT((area_vector(mesh, triangle).normalized() - kTilted.normal()).norm(), 1e-12);
}

}  // namespace
}  // namespace fillside
