#include "libsim/geometry/seams.h"

#include <gtest/gtest.h>

#include "libsim/geometry/item.h"

namespace fillside {
namespace {

TEST(Seams, FindsTheFirstCornerAtTheSamePlace) {
  const std::vector<Point> corners{{1, 2, 3}, {0, 0, 0}, {1, 2, 3}, {0.0, -0.0, 0}, {1, 2, 3.0000001}};
  EXPECT_EQ(first_at_same_place(corners), (std::vector<std::uint32_t>{0, 1, 0, 1, 4}));
}

TEST(Seams, AWatertightMeshHasNoOpenEdgeAndOneWithoutATriangleHasThree) {
  ItemShape shape;
  shape.kind = "dumpling";
  Mesh mesh = make_item(shape).parts[0].mesh;
  EXPECT_EQ(open_edge_count(mesh.triangles), 0U);
  mesh.triangles.pop_back();
  EXPECT_EQ(open_edge_count(mesh.triangles), 3U);
  EXPECT_FALSE(is_watertight(mesh));
}

TEST(Seams, TwoTrianglesWoundAgainstEachOtherAreOpen) {
  const std::vector<Triangle> agreeing{{0, 1, 2}, {0, 2, 3}}, clashing{{0, 1, 2}, {0, 3, 2}};
  EXPECT_EQ(open_edge_count(agreeing), 4U);
  EXPECT_EQ(open_edge_count(clashing), 6U);
}

}  // namespace
}  // namespace fillside
