#include "libsim/geometry/slab.h"

#include <gtest/gtest.h>

#include <set>

namespace fillside {
namespace {

SlabGrid flat(int columns, int rows, double thick_m) {
  return {columns, rows, [=](int i, int j) { return Point(0.01 * i, 0.02 * j, thick_m); },
          [](int i, int j) { return Point(0.01 * i, 0.02 * j, 0.0); }};
}

/// Corners - edges + triangles: 2 for a ball, 0 for a ring, minus 2 for every further hole. Euler's
/// polyhedron formula; Hatcher, Algebraic Topology, 2002, theorem 2.44.
long euler_characteristic(const Mesh& mesh) {
  std::set<std::pair<std::uint32_t, std::uint32_t>> edges;
  for (const Triangle& t : mesh.triangles)
    for (std::size_t i = 0; i < 3; ++i) edges.insert(std::minmax(t[i], t[(i + 1) % 3]));
  return static_cast<long>(mesh.corners.size()) - static_cast<long>(edges.size()) +
         static_cast<long>(mesh.triangles.size());
}

TEST(Slab, AFlatOneIsABox) {
  const Mesh mesh = slab(flat(3, 2, 0.005));
  EXPECT_TRUE(is_watertight(mesh));
  EXPECT_NEAR(volume_m3(mesh), 0.03 * 0.04 * 0.005, 1e-15);
  EXPECT_NEAR(area_m2(mesh), 2.0 * (0.03 * 0.04 + 0.03 * 0.005 + 0.04 * 0.005), 1e-15);
  EXPECT_EQ(euler_characteristic(mesh), 2);
}

TEST(Slab, AMissingCellIsAHoleWithWalls) {
  SlabGrid grid = flat(3, 3, 0.005);
  grid.has = [](int i, int j) { return i != 1 || j != 1; };
  const Mesh mesh = slab(grid);
  EXPECT_TRUE(is_watertight(mesh));
  EXPECT_NEAR(volume_m3(mesh), 8.0 * 0.01 * 0.02 * 0.005, 1e-15);
  EXPECT_EQ(euler_characteristic(mesh), 0);
}

TEST(Slab, CornersThatNoCellNeedsAreLeftOut) {
  SlabGrid grid = flat(4, 1, 0.005);
  grid.has = [](int i, int) { return i < 2; };
  EXPECT_EQ(slab(grid).corners.size(), 12U);
}

}  // namespace
}  // namespace fillside
