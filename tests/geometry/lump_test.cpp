#include "libsim/geometry/lump.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

/// Volume within |x/a|^p + |y/b|^p + |z/c|^p = 1: 8 a b c Gamma(1 + 1/p)^3 / Gamma(1 + 3/p). Dirichlet's
/// integral; NIST Digital Library of Mathematical Functions, 5.14.1 (a ball for p = 2, a box for p to
/// infinity).
double superellipsoid_m3(const Eigen::Vector3d& half, double p) {
  return 8.0 * half.prod() * std::pow(std::tgamma(1.0 + 1.0 / p), 3.0) / std::tgamma(1.0 + 3.0 / p);
}

TEST(Lump, HasTheVolumeOfItsCurve) {
  const Eigen::Vector3d half(0.01, 0.02, 0.015);
  for (const double p : {2.0, 3.0, 6.0}) {
    const Mesh mesh = lump({half, p, 160, 80});
    EXPECT_TRUE(is_watertight(mesh));
    EXPECT_NEAR(volume_m3(mesh), superellipsoid_m3(half, p), 0.003 * superellipsoid_m3(half, p)) << p;
    EXPECT_NEAR(bounds_of(mesh).high.z(), half.z(), 1e-12);
    EXPECT_NEAR(bounds_of(mesh).high.x(), half.x(), 1e-12);
  }
}

/// Any direction goes anywhere alike: means of a turned axis are 0 with variance 1/3 each; limits are four
/// standard errors.
TEST(Lump, TumblesEveryWayAlike) {
  constexpr int kTurns = 6000;
  Eigen::Vector3d sum = Eigen::Vector3d::Zero(), squares = Eigen::Vector3d::Zero();
  for (int i = 0; i < kTurns; ++i) {
    const Eigen::Vector3d x = tumbled(static_cast<std::uint64_t>(i)) * Direction::UnitX();
    ASSERT_NEAR(x.norm(), 1.0, 1e-12);
    sum += x;
    squares += x.cwiseAbs2();
  }
  const double mean_limit = 4.0 * std::sqrt(1.0 / 3.0 / kTurns);
  const double square_limit = 4.0 * std::sqrt((1.0 / 5.0 - 1.0 / 9.0) / kTurns);
  for (int axis = 0; axis < 3; ++axis) {
    EXPECT_NEAR(sum[axis] / kTurns, 0.0, mean_limit);
    EXPECT_NEAR(squares[axis] / kTurns, 1.0 / 3.0, square_limit);
  }
}

}  // namespace
}  // namespace fillside
