#include "libsim/geometry/relief.h"

#include <gtest/gtest.h>

#include "libsim/base/sample_numbers.h"

namespace fillside {
namespace {

Point place(std::uint32_t i) {
  const Numbers4 u = SampleNumbers(3, 0, 0, i).group(0);
  return Point(u[0], u[1], u[2]) * 40.0 - Point::Constant(20.0);
}

TEST(Relief, NoiseStaysWithinOneAndCentresOnNothing) {
  double sum = 0.0, squares = 0.0;
  for (std::uint32_t i = 0; i < 20000; ++i) {
    const double value = value_noise(place(i), 5);
    ASSERT_LE(std::abs(value), 1.0);
    sum += value;
    squares += value * value;
  }
  EXPECT_NEAR(sum / 20000.0, 0.0, 0.02);
  // Uniform lattice values have variance 1/3; blending three times over shrinks it by (integral of
  // w^2+(1-w)^2)^3. With w = 6t^5 - 15t^4 + 10t^3 that integral is 181/231.
  EXPECT_NEAR(squares / 20000.0, std::pow(181.0 / 231.0, 3) / 3.0, 0.01);
}

TEST(Relief, NoiseIsContinuousAcrossCells) {
  for (std::uint32_t i = 0; i < 200; ++i) {
    Point p = place(i);
    p.x() = std::round(p.x());
    const double left = value_noise(p - Point(1e-9, 0, 0), 5), right = value_noise(p + Point(1e-9, 0, 0), 5);
    EXPECT_NEAR(left, right, 1e-7);
  }
}

TEST(Relief, SeedsGiveUnrelatedBumps) {
  double product = 0.0;
  for (std::uint32_t i = 0; i < 20000; ++i) product += bumps(place(i), 1.0, 1) * bumps(place(i), 1.0, 2);
  EXPECT_NEAR(product / 20000.0, 0.0, 0.01);
}

TEST(Relief, MovesACubesCornersAlongTheirDiagonals) {
  Mesh cube;
  for (int c = 0; c < 8; ++c) cube.corners.emplace_back((c & 1) * 2 - 1, (c & 2) - 1, (c & 4) / 2 - 1);
  cube.triangles = {{0, 2, 3}, {0, 3, 1}, {4, 5, 7}, {4, 7, 6}, {0, 1, 5}, {0, 5, 4},
                    {2, 6, 7}, {2, 7, 3}, {0, 4, 6}, {0, 6, 2}, {1, 3, 7}, {1, 7, 5}};
  const double volume_before_m3 = volume_m3(cube);
  move_along_normals(cube, [](std::size_t) { return 0.1; });
  EXPECT_NEAR(volume_before_m3, 8.0, 1e-12);
  EXPECT_GT(volume_m3(cube), 8.0);
  for (const Point& corner : cube.corners) EXPECT_GT(corner.norm(), std::sqrt(3.0));
}

}  // namespace
}  // namespace fillside
