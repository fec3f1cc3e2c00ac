// Things in the way: black cards, walls and boxes, and how much light they keep off.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/quadrature.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Matte kBlack{grey(0.0)};

// The set: Walton, "Calculation of Obstructed View Factors by Adaptive Integration", NISTIR 6925, 2002, and
// the example "square obstruction" of the program View3D that belongs to it. The value: shadow polygons, and
// again here.
TEST(Blockers, a_square_between_two_squares_takes_the_known_part_of_their_view_factor) {
  const Rectangle lamp = sheet({0, 0, 1}, {1, 1, 1}, kDown), floor = sheet({0, 0, 0}, {1, 1, 0}, kUp);
  const Rectangle obstacle = sheet({0, 0, 0.5}, {0.5, 0.5, 0.5}, kDown);
  SceneParts parts;
  add_lamp(parts, lamp, 1.0 / kPi);
  add_wall(parts, mesh_of(obstacle), kBlack);
  EXPECT_TRUE(agrees(read(Scene(std::move(parts)), mean_over(floor), kMany), 0.1498686718));
}

// Seen from the meter, the card's shadow on the lamp's plane is the square from p + 2 (o - p): what of it
// lies on the lamp is not seen. The parts of the floor where that is clipped differently are integrated
// apart.
TEST(Blockers, the_known_view_factor_is_that_of_the_shadow_polygons) {
  double seen = 0.0;
  for (const auto& [x0, x1] : {std::pair{0.0, 0.5}, {0.5, 1.0}})
    for (const auto& [y0, y1] : {std::pair{0.0, 0.5}, {0.5, 1.0}})
      seen += integral_over(sheet({x0, y0, 0}, {x1, y1, 0}, kUp), 24, [](const Point& p) {
        const double right = std::min(1.0, 1.0 - p.x()), back = std::min(1.0, 1.0 - p.y());
        const double whole = illuminance_by_even(sheet({0, 0, 1}, {1, 1, 1}, kDown), 1.0, p, kUp);
        return (whole - illuminance_by_even(sheet({0, 0, 1}, {right, back, 1}, kDown), 1.0, p, kUp)) / kPi;
      });
  EXPECT_NEAR(seen, 0.1498686718, 1e-9);
}

// A card that hides all of the window left of x = 0.2, as projected from the meter: what is left is two
// rectangles that share a foot (configuration_factors.h).
Scene window_behind_a_half_plane(double edge_x_m) {
  SceneParts parts = black_room(window_on_the_table());
  add_wall(parts, mesh_of(sheet({-50, 0.5, -50}, {edge_x_m, 0.5, 50}, kAway)), kBlack);
  return Scene(std::move(parts));
}

TEST(Blockers, a_card_with_an_upright_edge_leaves_what_its_projection_leaves) {
  const Scene scene = window_behind_a_half_plane(0.1);
  const double L = 1000.0;
  const double up = kPi * L * (perpendicular_corner(1.2, 0.6, 1.0) - perpendicular_corner(1.2, 0.2, 1.0));
  EXPECT_NEAR(up, 94.885088, 1e-6);
  EXPECT_TRUE(agrees(read(scene, flat_meter({0, 1, 0}, kUp), kMany), up));
  const double to_window = kPi * L * (parallel_corner(1.2, 0.6, 1.0) - parallel_corner(1.2, 0.2, 1.0));
  EXPECT_NEAR(to_window, 212.712510, 1e-6);
  EXPECT_TRUE(agrees(read(scene, flat_meter({0, 1, 0}, kToWindow), kMany), to_window));
}

TEST(Blockers, a_card_to_the_middle_of_the_window_leaves_exactly_half) {
  EXPECT_TRUE(
      agrees(read(window_behind_a_half_plane(0.0), flat_meter({0, 1, 0}, kUp), kMany), 0.5 * 305.642076));
}

TEST(Blockers, do_not_touch_the_unshadowed_key) {
  const Measurement measured = measure(window_behind_a_half_plane(0.1), flat_meter({0, 1, 0}, kUp), kSome);
  EXPECT_TRUE(agrees(measured.unshadowed(0, 0), 305.6421));
}

// A long wall of height h at distance d takes the sky below the angle b = atan(h / d) on one side. What is
// left, (1 + cos b) / 2 of it: the differential element and the endless strip, Howell's Catalog, section B
// (derived here). The sky is an even ceiling so wide that all but a millionth of it is there.
TEST(Blockers, a_long_black_wall_takes_its_angle_of_an_even_sky) {
  struct Wall {
    double height_m, distance_m, left;
  };
  for (const auto& [height_m, distance_m, left] :
       {Wall{0.3, 0.3, 0.85355339}, Wall{0.4, 0.3, 0.80000000}, Wall{1.0, 0.5, 0.72360680}}) {
    EXPECT_NEAR(0.5 * (1.0 + std::cos(std::atan2(height_m, distance_m))), left, 1e-8);
    SceneParts parts = black_room(sheet({-2000, -2000, 2}, {2000, 2000, 2}, kDown));
    add_wall(parts, mesh_of(sheet({-2000, distance_m, 0}, {2000, distance_m, height_m}, kToWindow)), kBlack);
    EXPECT_TRUE(agrees(read(Scene(std::move(parts)), flat_meter({0, 0, 0}, kUp), kMany), kPi * 1000.0 * left))
        << height_m << " m high";
  }
}

}  // namespace
}  // namespace fillside::tests
