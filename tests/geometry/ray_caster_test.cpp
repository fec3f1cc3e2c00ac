#include "libsim/geometry/ray_caster.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "libsim/geometry/panels.h"
#include "tests/base/dice.h"
#include "tests/geometry/ball_mesh.h"

namespace fillside {
namespace {

RayCaster cast(const std::vector<Mesh>& meshes, std::uint32_t mask = kOpaque) {
  std::vector<CastSurface> surfaces;
  for (const Mesh& mesh : meshes) surfaces.push_back({&mesh, mask});
  return RayCaster(surfaces);
}

TEST(RayCaster, meets_a_box_where_the_planes_say) {
  const RayCaster caster = cast({box_mesh({0, 0, 1}, 2, 2, 2)});  // from -1, -1, 1 to 1, 1, 3
  const Direction slant = Direction(1, 0.2, 0.1).normalized();
  const auto hit = caster.first_hit({{-3, 0, 2}, slant}, kEverything);
  ASSERT_TRUE(hit);
  EXPECT_NEAR(hit->distance_m, 2.0 / slant.x(), 1e-5);
  EXPECT_LT((hit->position - Point(-1, 0.4, 2.2)).norm(), 1e-5);
  EXPECT_LT((hit->normal - Direction(-1, 0, 0)).norm(), 1e-6);
  EXPECT_EQ(hit->surface, 0u);
}

TEST(RayCaster, shadow_rays_shot_together_find_what_each_finds_alone) {
  const RayCaster caster =
      cast({tests::ball_mesh({0.2, 0.1, 0.3}, 0.5, 40), box_mesh({1, 0, 0}, 0.3, 0.4, 0.5)});
  tests::Dice dice(72);
  int blocked = 0, rays_shot = 0;
  for (std::size_t count = 1; count <= kMostRaysTogether; ++count)
    for (int repeat = 0; repeat < 20; ++repeat) {
      std::vector<Ray> rays;
      for (std::size_t i = 0; i < count; ++i)
        rays.push_back({{-0.4, -0.4, 0.2}, dice.throw_direction(), 2.5});
      const std::uint32_t together = caster.blocked(rays, kEverything);
      EXPECT_EQ(together >> count, 0u);
      for (std::size_t i = 0; i < count; ++i, ++rays_shot) {
        EXPECT_EQ((together >> i) & 1u, caster.blocked(rays[i], kEverything) ? 1u : 0u);
        blocked += static_cast<int>((together >> i) & 1u);
      }
    }
  EXPECT_GT(blocked, rays_shot / 20);
  EXPECT_LT(blocked, rays_shot * 19 / 20);
}

TEST(RayCaster, a_hit_s_weights_lead_back_to_its_place) {
  const Mesh ball = tests::ball_mesh({0, 0, 0}, 1.0, 20);
  const RayCaster caster = cast({ball});
  tests::Dice dice(73);
  for (int i = 0; i < 200; ++i) {
    const auto hit = caster.first_hit({Point::Zero(), dice.throw_direction()}, kEverything);
    ASSERT_TRUE(hit);
    const Triangle& corner = ball.triangles[hit->triangle];
    const Point &a = ball.corners[corner[0]], &b = ball.corners[corner[1]], &c = ball.corners[corner[2]];
    EXPECT_LT((a + hit->along_second * (b - a) + hit->along_third * (c - a) - hit->position).norm(), 1e-5);
  }
}

TEST(RayCaster, from_inside_meets_the_far_face_with_its_outward_normal) {
  const auto hit = cast({box_mesh({0, 0, 1}, 2, 2, 2)}).first_hit({{0, 0, 2}, {0, 0, 1}}, kEverything);
  ASSERT_TRUE(hit);
  EXPECT_NEAR(hit->distance_m, 1.0, 1e-6);
  EXPECT_LT((hit->normal - Direction(0, 0, 1)).norm(), 1e-6);
}

TEST(RayCaster, meets_a_ball_where_the_sphere_is) {
  const double radius_m = 0.5;
  const RayCaster caster = cast({tests::ball_mesh({0.2, 0.1, 0.3}, radius_m, 200)});
  tests::Dice dice(71);
  for (int i = 0; i < 2000; ++i) {
    const Direction outward = dice.throw_direction();
    const Point goal = Point(0.2, 0.1, 0.3) + radius_m * outward;
    const Point from = goal + outward + 0.5 * dice.throw_direction();
    if ((from - goal).dot(outward) < 0.3) continue;
    const auto hit = caster.first_hit({from, (goal - from).normalized()}, kEverything);
    ASSERT_TRUE(hit);
    EXPECT_NEAR(hit->distance_m, (goal - from).norm(), 1e-3);
    EXPECT_GT(hit->normal.dot(outward), 0.998);
  }
}

TEST(RayCaster, misses_what_is_not_in_the_way) {
  const RayCaster caster = cast({box_mesh({0, 0, 0}, 1, 1, 1)});
  EXPECT_FALSE(caster.first_hit({{-3, 0, 1.01}, {1, 0, 0}}, kEverything));
  EXPECT_FALSE(caster.first_hit({{-3, 0, 0.5}, {-1, 0, 0}}, kEverything));
  EXPECT_FALSE(RayCaster({}).first_hit({{0, 0, 0}, {1, 0, 0}}, kEverything));
}

TEST(RayCaster, names_the_nearest_surface) {
  const RayCaster caster = cast({box_mesh({5, 0, 0}, 1, 1, 1), box_mesh({2, 0, 0}, 1, 1, 1)});
  EXPECT_EQ(caster.first_hit({{0, 0, 0.5}, {1, 0, 0}}, kEverything)->surface, 1u);
  EXPECT_EQ(caster.first_hit({{8, 0, 0.5}, {-1, 0, 0}}, kEverything)->surface, 0u);
}

TEST(RayCaster, minds_only_the_surfaces_in_the_mask) {
  const std::vector<Mesh> meshes{box_mesh({1, 0, 0}, 0.1, 1, 1), box_mesh({2, 0, 0}, 0.1, 1, 1),
                                 box_mesh({3, 0, 0}, 0.1, 1, 1), box_mesh({4, 0, 0}, 0.1, 1, 1)};
  const std::vector<CastSurface> surfaces{{&meshes[0], kLetsThroughSubject},
                                          {&meshes[1], kOpaqueSubject},
                                          {&meshes[2], kLetsThrough},
                                          {&meshes[3], kOpaque}};
  const RayCaster caster(surfaces);
  const Ray ray{{0, 0, 0.5}, {1, 0, 0}};
  EXPECT_EQ(caster.first_hit(ray, kEverything)->surface, 0u);
  EXPECT_EQ(caster.first_hit(ray, kAllOpaque)->surface, 1u);
  EXPECT_EQ(caster.first_hit(ray, kWithoutSubject)->surface, 2u);
  EXPECT_EQ(caster.first_hit(ray, kAllOpaque & kWithoutSubject)->surface, 3u);
  EXPECT_FALSE(caster.blocked({{0, 0, 0.5}, {1, 0, 0}, 2.5}, kWithoutSubject));
  EXPECT_TRUE(caster.blocked({{0, 0, 0.5}, {1, 0, 0}, 2.5}, kEverything));
}

TEST(RayCaster, is_blocked_only_by_what_lies_before_the_far_end) {
  const RayCaster caster = cast({box_mesh({2, 0, 0}, 1, 1, 1)});  // near face at 1.5
  EXPECT_FALSE(caster.blocked({{0, 0, 0.5}, {1, 0, 0}, 1.49}, kEverything));
  EXPECT_TRUE(caster.blocked({{0, 0, 0.5}, {1, 0, 0}, 1.51}, kEverything));
  EXPECT_TRUE(caster.blocked({{0, 0, 0.5}, {1, 0, 0}}, kEverything));
  EXPECT_FALSE(caster.first_hit({{0, 0, 0.5}, {1, 0, 0}, 1.49}, kEverything));
}

TEST(Leaving, starts_off_the_surface_on_the_side_it_goes_to) {
  const Direction normal{0, 0, 1};
  EXPECT_GT(leaving({1, 2, 3}, normal, Direction(0.6, 0, 0.8)).origin.z(), 3.0);
  EXPECT_LT(leaving({1, 2, 3}, normal, Direction(0.6, 0, -0.8)).origin.z(), 3.0);
}

TEST(Leaving, does_not_meet_the_surface_it_leaves) {
  const Mesh ball = tests::ball_mesh({1, 2, 3}, 0.15, 60);
  const RayCaster caster = cast({ball});
  tests::Dice dice(72);
  for (int i = 0; i < 20000; ++i) {
    const Triangle& t = ball.triangles[static_cast<std::size_t>(dice.throw_one() *
                                                                static_cast<double>(ball.triangles.size()))];
    const double a = dice.throw_one(), b = dice.throw_one() * (1.0 - a);
    const Point at = a * ball.corners[t[0]] + b * ball.corners[t[1]] + (1.0 - a - b) * ball.corners[t[2]];
    const Direction normal = area_vector(ball, t).normalized();
    Direction out = dice.throw_direction();
    if (out.dot(normal) < 0.0) out = -out;
    EXPECT_FALSE(caster.blocked(leaving(at, normal, out), kEverything));
    EXPECT_TRUE(caster.blocked(leaving(at, normal, -out), kEverything));
  }
}

/// A room 4 x 3.5 x 2.5 m of six rectangles facing inward, one wall with two windows filled by their
/// rectangles.
std::vector<Mesh> closed_room() {
  const Rectangle wall{{0, 1.75, 0.5}, {2, 0, 0}, {0, 0, 1.25}};
  const std::vector<Rectangle> windows{{{-0.613, 1.75, 0.71}, {0.457, 0, 0}, {0, 0, 0.603}},
                                       {{1.117, 1.75, 0.61}, {0.307, 0, 0}, {0, 0, 0.707}}};
  std::vector<Mesh> room{wall_with_holes(wall, windows)};
  for (const Rectangle& window : windows) room.push_back(mesh_of(window));
  for (const Rectangle& side :
       {Rectangle{{0, -1.75, 0.5}, {-2, 0, 0}, {0, 0, 1.25}},
        Rectangle{{2, 0, 0.5}, {0, -1.75, 0}, {0, 0, 1.25}},
        Rectangle{{-2, 0, 0.5}, {0, 1.75, 0}, {0, 0, 1.25}},
        Rectangle{{0, 0, -0.75}, {2, 0, 0}, {0, 1.75, 0}}, Rectangle{{0, 0, 1.75}, {0, 1.75, 0}, {2, 0, 0}}})
    room.push_back(mesh_of(side));
  return room;
}

TEST(RayCaster, lets_no_ray_out_of_a_closed_room_with_windows_set_in_a_wall) {
  const RayCaster caster = cast(closed_room());
  tests::Dice dice(73);
  int lost = 0;
  for (int i = 0; i < 100000; ++i) {
    const Point from{3.9 * (dice.throw_one() - 0.5), 3.4 * (dice.throw_one() - 0.5),
                     2.4 * dice.throw_one() - 0.7};
    const auto hit = caster.first_hit({from, dice.throw_direction()}, kEverything);
    lost += !hit || hit->normal.dot(hit->position - from) > 0.0;
  }
  EXPECT_EQ(lost, 0);
}

TEST(RayCaster, lets_no_ray_out_along_the_seams_between_wall_and_window) {
  const RayCaster caster = cast(closed_room());
  tests::Dice dice(74);
  int lost = 0;
  for (int i = 0; i < 100000; ++i) {
    const Point from{3.9 * (dice.throw_one() - 0.5), 3.4 * (dice.throw_one() - 0.5),
                     2.4 * dice.throw_one() - 0.7};
    const double along = 2.0 * dice.throw_one() - 1.0;
    const Rectangle window{{-0.613, 1.75, 0.71}, {0.457, 0, 0}, {0, 0, 0.603}};
    const Point seam = i % 4 == 0 ? window.at(-1, along)
                                  : (i % 4 == 1 ? window.at(1, along)
                                                : (i % 4 == 2 ? window.at(along, -1) : window.at(along, 1)));
    lost += !caster.first_hit({from, (seam - from).normalized()}, kEverything);
  }
  EXPECT_EQ(lost, 0);
}

}  // namespace
}  // namespace fillside
