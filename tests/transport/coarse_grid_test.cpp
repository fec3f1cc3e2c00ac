#include "libsim/transport/coarse_grid.h"

#include <gtest/gtest.h>

#include "libsim/transport/kept_light.h"
#include "libsim/transport/measure.h"
#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

/// A box stands on the table.
Scene room_with_a_box() {
  SceneParts parts = furnished_room();
  parts.add_surface(box_mesh({1.6, 1.2, 0.69}, 0.1, 0.08, 0.1), Matte{grey(0.5)},
                    parts.add_object("box", ObjectKind::prop));
  return Scene(std::move(parts));
}

class CoarseGridTest : public ::testing::Test {
 protected:
  Scene scene = room_with_a_box();
  MapPlane plane{"table", sheet({1.25, 0.85, 0.701}, {2.25, 1.6, 0.701}, kUp), 100, 75};
  std::vector<bool> covered = [this] {
    std::vector<bool> cells;
    for (std::size_t e = 0; e < plane.element_count(); ++e) cells.push_back(is_covered(plane, scene, e));
    return cells;
  }();
  CoarseGrid grid{scene, plane, covered, 1};
};

TEST_F(CoarseGridTest, leaves_most_of_an_open_table_out) {
  EXPECT_LT(grid.share_measured(), 0.6);
  EXPECT_GT(grid.share_measured(), 1.0 / 64);  // the grid itself, and what is close to things
}

TEST_F(CoarseGridTest, measures_every_cell_right_beside_a_thing) {
  const auto columns = static_cast<std::size_t>(plane.columns);
  int beside = 0;
  for (std::size_t e = columns + 1; e + columns + 1 < plane.element_count(); ++e) {
    if (covered[e] || !(covered[e - 1] || covered[e + 1] || covered[e - columns] || covered[e + columns]))
      continue;
    EXPECT_FALSE(grid.is_filled_in(e)) << e;
    ++beside;
  }
  EXPECT_GT(beside, 10);
}

// Bilinear interpolation gives back a linear field without error.
TEST_F(CoarseGridTest, fills_in_a_slope_exactly) {
  Measurement slope(scene, "slope", plane.columns, plane.rows, 2);
  const auto height = [&](std::size_t e) {
    return 3.0 + plane.middle_of(e).x() - 2.0 * plane.middle_of(e).y();
  };
  const std::vector<Rgb> nothing(scene.sources().size(), grey(0.0));
  std::vector<Rgb> rows(slope.source_count() * slope.via_count(), grey(0.0));
  for (std::size_t e = 0; e < plane.element_count(); ++e) {
    if (grid.left_out()[e]) continue;
    for (int replicate : {0, 1}) {
      rows[0] = grey((replicate + 1) * height(e));
      slope.set(e, replicate, rows, nothing);
    }
  }
  grid.fill(slope);
  for (std::size_t e = 0; e < plane.element_count(); ++e) {
    if (covered[e]) continue;
    const Estimate filled = slope.total(e);
    EXPECT_NEAR(filled.replicate(0), height(e), 1e-5);
    EXPECT_NEAR(filled.replicate(1), 2.0 * height(e), 1e-5);
  }
}

TEST_F(CoarseGridTest, measures_all_of_a_map_that_is_coarse_itself) {
  MapPlane coarse = plane;
  coarse.columns = 12, coarse.rows = 9;
  EXPECT_EQ(CoarseGrid(scene, coarse, std::vector<bool>(coarse.element_count()), 1).share_measured(), 1.0);
}

// All light that does not come straight, filled in and measured everywhere with other numbers: within the
// noise of both and half a per cent, averaged over blocks of 25 cells.
TEST_F(CoarseGridTest, a_filled_map_agrees_with_one_measured_everywhere) {
  const KeptLight kept(scene, kEverything, {.samples = 32, .replicates = 8});
  const Parts turned = kBoardPart | kRestPart;
  Budget budget{.samples = 16, .replicates = 8, .parts = turned, .kept = &kept};
  budget.left_out = &covered;
  const Measurement everywhere = measure(scene, plane, budget);
  budget.left_out = &grid.left_out();
  budget.seed = 2;
  budget.samples = 64;
  Measurement filled = measure(scene, plane, budget);
  grid.fill(filled);
  const auto columns = static_cast<std::size_t>(plane.columns);
  for (std::size_t row = 0; row < 75; row += 25)
    for (std::size_t column = 0; column < columns; column += 25) {
      Estimate a = 0.0, b = 0.0;
      for (std::size_t r = row; r < row + 25; ++r)
        for (std::size_t c = column; c < column + 25; ++c) {
          const std::size_t e = r * columns + c;
          if (!covered[e]) a = a + everywhere.total(e), b = b + filled.total(e);
        }
      const double noise = std::hypot(a.standard_error(), b.standard_error());
      EXPECT_LT(noise, 0.01 * a.value());
      EXPECT_NEAR(b.value(), a.value(), 4.0 * noise + 0.005 * a.value()) << row << ' ' << column;
    }
}

}  // namespace
}  // namespace fillside::tests
