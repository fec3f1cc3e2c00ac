#include "libsim/base/space.h"

#include <gtest/gtest.h>

#include "tests/base/dice.h"

namespace fillside {
namespace {

void expect_right_handed_orthonormal(const Direction& normal) {
  const Frame frame = frame_around(normal);
  EXPECT_NEAR(frame.tangent.norm(), 1.0, 1e-14);
  EXPECT_NEAR(frame.bitangent.norm(), 1.0, 1e-14);
  EXPECT_NEAR(frame.tangent.dot(frame.bitangent), 0.0, 1e-14);
  EXPECT_NEAR(frame.tangent.dot(normal), 0.0, 1e-14);
  EXPECT_NEAR(frame.bitangent.dot(normal), 0.0, 1e-14);
  EXPECT_NEAR((frame.tangent.cross(frame.bitangent) - normal).norm(), 0.0, 1e-14) << normal.transpose();
}

TEST(FrameAround, is_right_handed_and_orthonormal_for_any_normal) {
  tests::Dice dice(1);
  for (int i = 0; i < 10000; ++i) expect_right_handed_orthonormal(dice.throw_direction());
}

TEST(FrameAround, survives_normals_straight_down_and_nearly_so) {
  expect_right_handed_orthonormal({0, 0, -1});
  expect_right_handed_orthonormal({0, 0, 1});
  expect_right_handed_orthonormal({1, 0, 0.0});
  expect_right_handed_orthonormal({0, 1, -0.0});
  for (const double lean : {1e-3, 1e-8, 1e-15})
    expect_right_handed_orthonormal(Direction(lean, -lean, -1).normalized());
}

TEST(Frame, to_local_undoes_to_world) {
  tests::Dice dice(2);
  for (int i = 0; i < 100; ++i) {
    const Frame frame = frame_around(dice.throw_direction());
    const Eigen::Vector3d local(dice.throw_one(), -dice.throw_one(), dice.throw_one());
    EXPECT_NEAR((frame.to_local(frame.to_world(local)) - local).norm(), 0.0, 1e-14);
    EXPECT_NEAR((frame.to_world({0, 0, 1}) - frame.normal).norm(), 0.0, 1e-15);
  }
}

TEST(Reflected, turns_the_tangential_part_and_keeps_the_normal_part) {
  const Direction away(0.6, 0.0, 0.8), mirrored = reflected(away, {0, 0, 1});
  EXPECT_NEAR((mirrored - Direction(-0.6, 0.0, 0.8)).norm(), 0.0, 1e-15);
  EXPECT_NEAR((reflected(mirrored, {0, 0, 1}) - away).norm(), 0.0, 1e-15);
}

}  // namespace
}  // namespace fillside
