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

}  // namespace
}  // namespace fillside
