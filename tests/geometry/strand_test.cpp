#include "libsim/geometry/strand.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

constexpr int kSides = 48;

TEST(Strand, AStraightOneIsACapsule) {
  const double r = 0.003, length_m = 0.05;
  const std::array line{StrandPoint{{0.0, 0.0, 0.0}, r}, StrandPoint{{0.0, length_m, 0.0}, r}};
  const Mesh mesh = strand(line, kSides);
  EXPECT_TRUE(is_watertight(mesh));
  const double expected = kPi * r * r * length_m + 4.0 / 3.0 * kPi * r * r * r;
  EXPECT_LT(volume_m3(mesh), expected);  // chords lie inside
  EXPECT_NEAR(volume_m3(mesh), expected, 0.01 * expected);
  const Bounds box = bounds_of(mesh);
  EXPECT_NEAR(box.low.y(), -r, 1e-12);
  EXPECT_NEAR(box.high.y(), length_m + r, 1e-12);
}

std::vector<StrandPoint> half_circle(double bend_m, double r) {
  std::vector<StrandPoint> line;
  for (int i = 0; i <= 90; ++i) {
    const double angle = kPi * i / 90.0;
    line.push_back({bend_m * Point(std::cos(angle), std::sin(angle), 0.0), r});
  }
  return line;
}

/// Pappus's second theorem: area of the section times the way of its middle.
TEST(Strand, ABentOneHasTheVolumeOfPappus) {
  const double r = 0.002, bend_m = 0.03;
  const Mesh mesh = strand(half_circle(bend_m, r), kSides);
  EXPECT_TRUE(is_watertight(mesh));
  const double expected = kPi * r * r * kPi * bend_m + 4.0 / 3.0 * kPi * r * r * r;
  EXPECT_NEAR(volume_m3(mesh), expected, 0.01 * expected);
}

/// Along a plane curve the frame that turns least keeps its part across the plane: Wang, Juettler, Zheng and
/// Liu, ACM Trans. Graph. 27(1), 2008, section 1.
TEST(Strand, DoesNotTwistAlongAPlaneCurve) {
  const double r = 0.002;
  const auto line = half_circle(0.03, r);
  const Mesh mesh = strand(line, kSides);
  const std::size_t first_ring = 1 + 3 * kSides;  // after the pole and the three rings of the rounded end
  for (std::size_t i = 0; i < line.size(); ++i)
    EXPECT_NEAR(mesh.corners[first_ring + i * kSides].z(), mesh.corners[first_ring].z(), 1e-9) << i;
}

}  // namespace
}  // namespace fillside
