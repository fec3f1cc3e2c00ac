#include "libsim/geometry/panels.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "tests/base/dice.h"
#include "tests/geometry/welded.h"

namespace fillside {
namespace {

const Rectangle kWall{{0, 1, 1.25}, {2, 0, 0}, {0, 0, 1.25}};  // 4 m x 2.5 m, faces -y
const Rectangle kWindow{{-0.5, 1, 1.4}, {0.45, 0, 0}, {0, 0, 0.6}};
const Rectangle kSecond{{1.2, 1, 1.1}, {0.3, 0, 0}, {0, 0, 0.7}};
const Rectangle kDoor{{-1.7, 1, 1.0}, {0.3, 0, 0}, {0, 0, 1.0}};  // its sides touch the wall's edge and floor

/// How many triangles of a flat mesh hold the point (in the wall's own coordinates).
int triangles_over(const Mesh& mesh, const Eigen::Vector2d& point) {
  int count = 0;
  for (const Triangle& t : mesh.triangles) {
    Eigen::Vector2d at[3];
    for (std::size_t i = 0; i < 3; ++i) at[i] = kWall.coordinates_of(mesh.corners[t[i]]) - point;
    const auto side = [](const Eigen::Vector2d& a, const Eigen::Vector2d& b) {
      return a.x() * b.y() - a.y() * b.x();
    };
    const double s[] = {side(at[0], at[1]), side(at[1], at[2]), side(at[2], at[0])};
    count += (s[0] > 0 && s[1] > 0 && s[2] > 0) || (s[0] < 0 && s[1] < 0 && s[2] < 0);
  }
  return count;
}

void expect_whole_but_for(const std::vector<Rectangle>& holes) {
  const Mesh mesh = wall_with_holes(kWall, holes);
  tests::Dice dice(51);
  int open = 0;
  for (int i = 0; i < 4000; ++i) {
    const double u = 2.0 * dice.throw_one() - 1.0, v = 2.0 * dice.throw_one() - 1.0;
    const bool in_hole = std::ranges::any_of(holes, [&](const Rectangle& hole) {
      return hole.coordinates_of(kWall.at(u, v)).cwiseAbs().maxCoeff() < 1.0;
    });
    EXPECT_EQ(triangles_over(mesh, {u, v}), in_hole ? 0 : 1) << u << " " << v;
    open += in_hole;
  }
  EXPECT_EQ(open > 0, !holes.empty());
  for (const Triangle& triangle : mesh.triangles)
    EXPECT_GT(area_vector(mesh, triangle).normalized().dot(kWall.normal()), 1.0 - 1e-12);
}

TEST(WallWithHoles, is_the_whole_wall_when_there_are_none) {
  EXPECT_NEAR(area_m2(wall_with_holes(kWall, {})), 10.0, 1e-12);
  expect_whole_but_for({});
}

TEST(WallWithHoles, covers_each_point_once_and_leaves_every_point_of_a_hole_open) {
  expect_whole_but_for({kWindow});
  expect_whole_but_for({kWindow, kSecond, kDoor});
}

TEST(WallWithHoles, has_the_walls_area_less_the_holes) {
  const std::vector<Rectangle> holes{kWindow, kSecond, kDoor};
  EXPECT_NEAR(area_m2(wall_with_holes(kWall, holes)),
              kWall.area_m2() - kWindow.area_m2() - kSecond.area_m2() - kDoor.area_m2(), 1e-9);
}

TEST(WallWithHoles, counts_overlapping_holes_once) {
  const Rectangle shifted{kWindow.centre + Eigen::Vector3d(0.45, 0, -0.6), kWindow.half_u, kWindow.half_v};
  expect_whole_but_for({kWindow, shifted});
  const std::vector<Rectangle> holes{kWindow, shifted};
  EXPECT_NEAR(area_m2(wall_with_holes(kWall, holes)), 10.0 - (2.0 - 0.25) * kWindow.area_m2(), 1e-9);
}

TEST(WallWithHoles, cuts_off_what_of_a_hole_lies_beyond_the_wall) {
  const Rectangle over_edge{{2, 1, 1.25}, {0.5, 0, 0}, {0, 0, 0.5}};
  expect_whole_but_for({over_edge});
  const std::vector<Rectangle> holes{over_edge};
  EXPECT_NEAR(area_m2(wall_with_holes(kWall, holes)), 9.5, 1e-9);
}

TEST(EdgesOfSheet, close_front_and_back_to_a_watertight_board) {
  const Rectangle front{{0.3, 0.1, 0.4}, {0.18, 0.24, 0}, {-0.08, 0.06, 0.5}};
  Mesh board = mesh_of(front);
  append(board, mesh_of(back_of(front, 0.005)));
  EXPECT_FALSE(is_watertight(tests::welded(board)));
  append(board, edges_of_sheet(front, 0.005));
  EXPECT_TRUE(is_watertight(tests::welded(board)));
  EXPECT_NEAR(volume_m3(board), 0.005 * front.area_m2(), 1e-12);
}

TEST(BackOf, lies_behind_the_front_and_faces_the_other_way) {
  const Rectangle back = back_of(kWall, 0.1);
  EXPECT_LT((back.normal() + kWall.normal()).norm(), 1e-12);
  EXPECT_LT((back.centre - Point(0, 1.1, 1.25)).norm(), 1e-12);
  EXPECT_NEAR(back.area_m2(), kWall.area_m2(), 1e-12);
}

TEST(BoxMesh, is_closed_stands_on_its_foot_and_holds_its_sides_product) {
  const Mesh box = box_mesh({0.2, -0.1, 0.7}, 0.3, 0.4, 0.5);
  EXPECT_TRUE(is_watertight(box));
  EXPECT_NEAR(volume_m3(box), 0.06, 1e-12);
  EXPECT_NEAR(area_m2(box), 2.0 * (0.12 + 0.15 + 0.2), 1e-12);
  EXPECT_LT((bounds_of(box).low - Point(0.05, -0.3, 0.7)).norm(), 1e-12);
  EXPECT_LT((bounds_of(box).high - Point(0.35, 0.1, 1.2)).norm(), 1e-12);
}

}  // namespace
}  // namespace fillside
