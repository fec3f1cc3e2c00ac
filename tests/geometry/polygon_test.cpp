#include "libsim/geometry/polygon.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "libsim/base/sample_numbers.h"

namespace fillside {
namespace {

double area_of(std::span<const Point> outline, const std::vector<Triangle>& triangles) {
  return area_m2({{outline.begin(), outline.end()}, triangles});
}

/// A random star-shaped polygon in a random plane: never crosses itself, mostly far from convex.
std::vector<Point> star(std::uint32_t number, std::size_t corners) {
  const SampleNumbers numbers(11, number, 0, 0);
  const Numbers4 u = numbers.group(0);
  const Frame frame = frame_around(Point(u[0] - 0.5, u[1] - 0.5, u[2] - 0.5).normalized());
  std::vector<Point> outline;
  for (std::size_t i = 0; i < corners; ++i) {
    const Numbers4 v = numbers.group(static_cast<std::uint32_t>(i + 1));
    const double angle = 2.0 * kPi * (static_cast<double>(i) + 0.8 * v[0]) / static_cast<double>(corners);
    const double reach = 0.1 + v[1];
    outline.push_back(frame.to_world({reach * std::cos(angle), reach * std::sin(angle), 3.0}));
  }
  return outline;
}

TEST(Polygon, TrianglesCoverAnyPolygonExactlyOnce) {
  std::vector<Triangle> triangles;
  for (std::uint32_t number = 0; number < 200; ++number) {
    const std::vector<Point> outline = star(number, 5 + number % 40);
    ASSERT_TRUE(triangulate(outline, triangles)) << number;
    EXPECT_EQ(triangles.size(), outline.size() - 2);
    const double area = polygon_area_vector(outline).norm();
    EXPECT_NEAR(area_of(outline, triangles), area, 1e-9 * area) << number;
  }
}

TEST(Polygon, TrianglesAreWoundAsTheOutlineIs) {
  std::vector<Triangle> triangles;
  const std::vector<Point> outline = star(3, 12);
  ASSERT_TRUE(triangulate(outline, triangles));
  const Mesh mesh{outline, triangles};
  for (const Triangle& t : triangles) EXPECT_GT(area_vector(mesh, t).dot(polygon_area_vector(outline)), 0.0);
}

TEST(Polygon, AreaVectorOfASquareIsItsAreaAlongItsNormal) {
  const std::vector<Point> square{{1, 1, 5}, {3, 1, 5}, {3, 3, 5}, {1, 3, 5}};
  EXPECT_TRUE(polygon_area_vector(square).isApprox(Point(0, 0, 4)));
}

TEST(Polygon, KeepsACornerInTheMiddleOfAnEdge) {
  const std::vector<Point> square{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}};
  std::vector<Triangle> triangles;
  ASSERT_TRUE(triangulate(square, triangles));
  std::set<std::uint32_t> used;
  for (const Triangle& t : triangles) {
    used.insert(t.begin(), t.end());
    EXPECT_GT(area_vector({square, {}}, t).norm(), 0.1);
  }
  EXPECT_EQ(used.size(), 5U);
}

TEST(Polygon, ARingWithASlitIsCutToo) {
  // A square with a square hole, joined by a slit whose two sides lie on one another.
  const std::vector<Point> ring{{0, 0, 0}, {3, 0, 0}, {3, 3, 0}, {0, 3, 0}, {0, 0, 0},
                                {1, 1, 0}, {1, 2, 0}, {2, 2, 0}, {2, 1, 0}, {1, 1, 0}};
  std::vector<Triangle> triangles;
  ASSERT_TRUE(triangulate(ring, triangles));
  EXPECT_NEAR(area_of(ring, triangles), 8.0, 1e-12);
}

TEST(Polygon, ABowTieOrALineIsNotProper) {
  std::vector<Triangle> triangles;
  EXPECT_FALSE(triangulate(std::vector<Point>{{0, 0, 0}, {2, 2, 0}, {2, 0, 0}, {0, 1, 0}}, triangles));
  EXPECT_EQ(triangles.size(), 2U);
  EXPECT_FALSE(triangulate(std::vector<Point>{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}, {3, 0, 0}}, triangles));
  EXPECT_FALSE(triangulate(std::vector<Point>{{0, 0, 0}, {1, 0, 0}, {2, 0, 0}}, triangles));
}

}  // namespace
}  // namespace fillside
