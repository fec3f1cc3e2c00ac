#include "libsim/geometry/lathe.h"

#include <gtest/gtest.h>

#include <array>

namespace fillside {
namespace {

TEST(Lathe, TurnsACylinderWithTheVolumeOfItsPrism) {
  const Profile section{{0.0, 0.0}, {0.5, 0.0}, {0.5, 2.0}, {0.0, 2.0}};
  const Mesh mesh = turned(section, {.segments = 12});
  EXPECT_TRUE(is_watertight(mesh));
  const double polygon_m2 = 0.5 * 12 * 0.25 * std::sin(2.0 * kPi / 12);
  EXPECT_NEAR(volume_m3(mesh), 2.0 * polygon_m2, 1e-14);
}

TEST(Lathe, MeetsWidthAndDepthExactlyWhateverTheSquareness) {
  const Profile section{{0.0, 0.0}, {0.5, 0.0}, {0.5, 2.0}, {0.0, 2.0}};
  for (const double squareness : {2.0, 2.4, 4.0}) {
    const Bounds b =
        bounds_of(turned(section, {.depth_ratio = 0.6, .squareness = squareness, .segments = 36}));
    EXPECT_NEAR(b.high.x(), 0.5, 1e-14);
    EXPECT_NEAR(b.low.y(), -0.3, 1e-14);
  }
}

TEST(Lathe, KnowsWhichProfilePointACornerCameFrom) {
  const Profile section{{0.0, 0.0}, {0.5, 0.1}, {0.6, 0.2}, {0.0, 0.3}};
  const Plan plan{.segments = 8};
  const Mesh mesh = turned(section, plan);
  for (std::size_t i = 0; i < mesh.corners.size(); ++i)
    EXPECT_DOUBLE_EQ(mesh.corners[i].z(), section[profile_index_of(i, plan)].height_m);
}

TEST(Lathe, RoundingStaysWithinTheCornerAndTouchesBothEdges) {
  const std::array corners{ProfileCorner{0.0, 0.0}, ProfileCorner{1.0, 0.0, 0.2}, ProfileCorner{1.0, 1.0}};
  const Profile profile = rounded(corners);
  EXPECT_DOUBLE_EQ(profile[1].radius_m, 0.8);
  for (const ProfilePoint& p : profile) {
    EXPECT_LE(p.radius_m, 1.0);
    EXPECT_GE(p.height_m, 0.0);
  }
  EXPECT_NEAR(profile[profile.size() - 2].height_m, 0.2, 1e-15);
}

TEST(Lathe, ARoundingLongerThanItsEdgeIsCutToHalfOfIt) {
  const std::array corners{ProfileCorner{0.0, 0.0}, ProfileCorner{1.0, 0.0, 9.0}, ProfileCorner{1.0, 1.0}};
  EXPECT_DOUBLE_EQ(rounded(corners)[1].radius_m, 0.5);
}

TEST(Lathe, SplitsOnlyEdgesWithRelief) {
  const std::array corners{ProfileCorner{0.0, 0.0}, ProfileCorner{1.0, 0.0},
                           ProfileCorner{1.0, 1.0, 0.0, 1.0}, ProfileCorner{0.0, 1.0, 0.0, 1.0}};
  EXPECT_EQ(rounded(corners, 0.25).size(), 1U + 1U + 4U + 4U);
}

TEST(Lathe, FillsAConeToAnyLevel) {
  const Profile wall{{0.0, 0.0}, {1.0, 2.0}};
  const Profile held = filled_to(wall, 0.5);
  ASSERT_EQ(held.size(), 3U);
  EXPECT_DOUBLE_EQ(held[1].radius_m, 0.25);
  EXPECT_DOUBLE_EQ(held[1].height_m, 0.5);
  EXPECT_TRUE(filled_to(wall, 0.0).empty());
  EXPECT_DOUBLE_EQ(filled_to(wall, 9.0)[1].height_m, 2.0);  // runs over: brim full
}

/// Area of the outline (Gauss's shoelace formula) times height, for an outline that is not convex.
TEST(Lathe, AnyOutlineInSightOfItsMiddleCanBeTurned) {
  const Outline star{{1.0, 0.0},  {0.3, 0.3},   {0.0, 1.0},  {-0.3, 0.3},
                     {-1.0, 0.0}, {-0.2, -0.2}, {0.0, -1.0}, {0.2, -0.2}};
  double area = 0.0;
  for (std::size_t i = 0; i < star.size(); ++i) {
    const Eigen::Vector2d &a = star[i], &b = star[(i + 1) % star.size()];
    area += 0.5 * (a.x() * b.y() - a.y() * b.x());
  }
  const Mesh mesh = turned_along(star, {{0.0, 0.0}, {2.0, 0.0}, {2.0, 3.0}, {0.0, 3.0}});
  EXPECT_TRUE(is_watertight(mesh));
  EXPECT_NEAR(volume_m3(mesh), 4.0 * area * 3.0, 1e-12);
}

/// Pappus's second theorem, less what the chords of a polygon of n sides lose: sin(2 pi / n) / (2 pi / n).
TEST(Lathe, ARingHasTheVolumeOfPappus) {
  const int n = 24;
  const Mesh mesh = turned_ring({{1.0, 0.0}, {1.5, 0.0}, {1.5, 0.25}, {1.0, 0.25}}, Plan{.segments = n});
  EXPECT_TRUE(is_watertight(mesh));
  const double chords = std::sin(2.0 * kPi / n) / (2.0 * kPi / n);
  EXPECT_NEAR(volume_m3(mesh), 0.5 * 0.25 * 2.0 * kPi * 1.25 * chords, 1e-12);
}

TEST(Lathe, ADrumIsLevelAboveAndBelowAndAsWideAsSaid) {
  const Profile side = drum(0.1, 0.02, 0.06, 0.005, 12);
  EXPECT_DOUBLE_EQ(side.front().height_m, 0.02);
  EXPECT_DOUBLE_EQ(side.back().height_m, 0.06);
  double widest = 0.0;
  for (const ProfilePoint& p : side) {
    widest = std::max(widest, p.radius_m);
    EXPECT_TRUE(p.relief == 0.0 || (p.height_m > 0.02 && p.height_m < 0.06));
  }
  EXPECT_DOUBLE_EQ(widest, 0.1);
}

}  // namespace
}  // namespace fillside
