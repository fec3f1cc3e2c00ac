#include "libsim/geometry/cell_noise.h"

#include <gtest/gtest.h>

#include "libsim/geometry/dealt.h"

namespace fillside {
namespace {

Point place(std::uint64_t i) {
  return {dealt(8, 3 * i, -9.0, 9.0), dealt(8, 3 * i + 1, -9.0, 9.0), dealt(8, 3 * i + 2, -9.0, 9.0)};
}

TEST(CellNoise, TheNearestPointIsNoFartherThanTheSecond) {
  for (std::uint64_t i = 0; i < 2000; ++i) {
    const CellDistances cells = cell_noise(place(i), 4);
    ASSERT_LE(cells.nearest, cells.second);
    ASSERT_LE(cells.nearest, std::sqrt(3.0));  // each cell has a point, and its diagonal is sqrt 3
  }
}

/// A distance to points changes by no more than the way gone; were a cell left out, it would jump.
TEST(CellNoise, DistancesChangeNoFasterThanThePlace) {
  for (std::uint64_t i = 0; i < 2000; ++i) {
    const Point a = place(i),
                b = a + 0.05 * Point(dealt(9, i, -1, 1), dealt(10, i, -1, 1), dealt(11, i, -1, 1));
    const CellDistances at_a = cell_noise(a, 4), at_b = cell_noise(b, 4);
    ASSERT_LE(std::abs(at_a.nearest - at_b.nearest), (a - b).norm() + 1e-12);
    ASSERT_LE(std::abs(at_a.second - at_b.second), (a - b).norm() + 1e-12);
  }
}

TEST(CellNoise, CracksRunAlongTheBordersOnly) {
  int cracked = 0;
  for (std::uint64_t i = 0; i < 2000; ++i) {
    const double depth = crack_depth(0.02 * place(i), 0.02, 0.002, 4);
    const CellDistances cells = cell_noise(place(i), 4);
    const bool near_border = 0.02 * (cells.second - cells.nearest) < 0.002;
    EXPECT_EQ(depth > 0.0, near_border);
    EXPECT_LE(depth, 1.0);
    cracked += near_border ? 1 : 0;
  }
  EXPECT_GT(cracked, 50);
  EXPECT_LT(cracked, 1000);
}

}  // namespace
}  // namespace fillside
