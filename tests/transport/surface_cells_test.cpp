#include "libsim/transport/surface_cells.h"

#include <gtest/gtest.h>

#include <map>

#include "tests/closed_form/furnished_room.h"
#include "tests/closed_form/spheres.h"

namespace fillside::tests {
namespace {

/// A furnished room with a finely meshed ball on its table.
Scene room_with_a_ball() {
  SceneParts parts = furnished_room();
  add_wall(parts, sphere_mesh({1.8, 1.3, 0.8}, 0.04, 24), Matte{grey(0.6)}, "ball");
  return Scene(std::move(parts));
}

/// The hit that a ray straight at a drawn place gives.
std::optional<Hit> looked_at(const Scene& scene, const SurfaceCells::Place& place) {
  return scene.caster().first_hit({place.position + 1e-3 * place.normal, -place.normal, 2e-3}, kEverything);
}

TEST(SurfaceCells, what_is_drawn_in_a_cell_is_found_in_it_again) {
  const Scene scene = room_with_a_ball();
  const SurfaceCells cells(scene);
  ASSERT_GT(cells.count(), 1000u);
  int seen = 0, elsewhere = 0;
  for (std::uint32_t cell = 0; cell < cells.count(); ++cell) {
    const auto place = cells.draw(scene, cell, SampleNumbers(1, cell, 0, 0).group(0));
    const auto hit = looked_at(scene, place);
    if (!hit || hit->surface != place.surface) continue;  // something stands right before it
    ++seen;
    elsewhere += cells.cell_of(*hit) != cell;
  }
  EXPECT_GT(seen, 0.95 * static_cast<double>(cells.count()));
  EXPECT_LE(elsewhere, seen / 200);  // Embree's single precision puts a few on the neighbour's side of a line
}

TEST(SurfaceCells, a_board_s_cell_by_position_is_the_one_by_hit) {
  const Scene scene = room_with_a_ball();
  const SurfaceCells cells(scene);
  const std::size_t white = scene.targets()[0].surface;
  int differ = 0;
  for (std::uint32_t i = 0; i < 1000; ++i) {
    const Numbers4 u = SampleNumbers(3, 0, 0, i).group(0);
    const Point at = scene.targets()[0].rectangle.at(2.0 * u[0] - 1.0, 2.0 * u[1] - 1.0);
    const Direction normal = scene.targets()[0].rectangle.normal();
    const auto hit = looked_at(scene, {at, normal, white, 0, 0.0, 0.0});
    ASSERT_TRUE(hit);
    ASSERT_EQ(hit->surface, white);
    differ += cells.cell_at(scene, white, at) != cells.cell_of(*hit);
  }
  EXPECT_LE(differ, 5);
}

TEST(SurfaceCells, keep_none_for_what_sends_light_different_ways) {
  const Scene scene = room_with_a_ball();
  const SurfaceCells cells(scene);
  for (std::uint32_t s = 0; s < scene.surfaces().size(); ++s) {
    const Surface& surface = scene.surfaces()[s];
    const bool even = surface.emitter == fillside::kNone && std::holds_alternative<Matte>(surface.material);
    EXPECT_EQ(cells.cell_of({s, 0, 1.0, 0.2, 0.2, Point::Zero(), kUp}) == SurfaceCells::kNone, !even) << s;
  }
}

// Facets under a cell's size are gathered into one, and every square millimetre of them counts alike.
TEST(SurfaceCells, draw_small_facets_by_their_area) {
  const Point a(0, 0, 0), b(4, 0, 0), c(0, 4, 0), d(4, 1, 0);  // mm: areas of 8 and 2 mm2
  Mesh mesh;
  for (const Point& corner : {a, b, c, d}) mesh.corners.push_back(corner / 1000.0);
  mesh.triangles = {{0, 1, 2}, {0, 1, 3}};  // both face up
  SceneParts parts;
  add_wall(parts, mesh, Matte{}, "crumb");
  const Scene scene(std::move(parts));
  const SurfaceCells cells(scene);
  ASSERT_EQ(cells.count(), 1u);
  constexpr int kDraws = 10000;
  int large = 0;
  for (std::uint32_t i = 0; i < kDraws; ++i)
    large += cells.draw(scene, 0, SampleNumbers(7, 0, 0, i).group(0)).triangle == 0;
  EXPECT_NEAR(large, 0.8 * kDraws, 4.0 * std::sqrt(0.8 * 0.2 * kDraws));  // four standard deviations
}

// Every part of a cut triangle has the same area: points drawn evenly over a wall fall evenly into its cells.
TEST(SurfaceCells, of_a_wall_are_equally_large) {
  SceneParts parts;
  add_wall(parts, mesh_of(sheet({0, 0, 0}, {3, 2, 0}, kUp)), Matte{}, "wall");
  const Scene scene(std::move(parts));
  const SurfaceCells cells(scene);
  std::map<std::uint32_t, int> count;
  const int each = 200, all = each * static_cast<int>(cells.count());
  for (int i = 0; i < all; ++i) {
    const Numbers4 u = SampleNumbers(5, 0, 0, static_cast<std::uint32_t>(i)).group(0);
    ++count[cells.cell_at(scene, 0, {3.0 * u[0], 2.0 * u[1], 0})];
  }
  ASSERT_EQ(count.size(), cells.count());
  for (const auto& [cell, n] : count) EXPECT_NEAR(n, each, 6.0 * std::sqrt(each)) << cell;
}

}  // namespace
}  // namespace fillside::tests
