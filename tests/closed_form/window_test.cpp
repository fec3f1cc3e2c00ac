// An evenly bright window and nothing else: illuminance by closed form, for five ways to face and along the
// table. Formulas: see configuration_factors.h. The figures in lx were worked out from them and agree with
// quadrature.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

const Direction kUpToWindow = Direction(0, -1, 1).normalized();

TEST(ConfigurationFactors, give_the_worked_figures) {
  EXPECT_NEAR(parallel_corner(1, 1, 1), 0.1385316060, 1e-10);
  EXPECT_NEAR(parallel_corner(1.2, 1.5, 0.8), 0.1929241503, 1e-10);
  EXPECT_NEAR(perpendicular_corner(1, 1, 1), 0.0557341970, 1e-10);
  EXPECT_NEAR(perpendicular_corner(1.2, 1.5, 0.8), 0.1009498560, 1e-10);
  // The polygon form, of another author and age, gives the same.
  EXPECT_NEAR(polygon_factor({{0, 1, 0}, {1.5, 1, 0}, {1.5, 1, 1.2}, {0, 1, 1.2}}, {0, 0.2, 0}, kUp),
              perpendicular_corner(1.2, 1.5, 0.8), 1e-12);
}

struct Facing {
  Direction faces;
  double known_lx;
};

void expect_all(const Rectangle& window, const Point& at, const std::vector<Facing>& facings) {
  const Scene scene(black_room(window));
  for (const auto& [faces, known_lx] : facings) {
    EXPECT_NEAR(illuminance_by_even(window, 1000.0, at, faces), known_lx, 1e-4);
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, faces)), known_lx)) << "facing " << faces.transpose();
  }
}

TEST(WindowLight, on_the_table_has_the_closed_form_value_whichever_way_the_meter_faces) {
  expect_all(
      window_on_the_table(), {0, 1, 0},
      {{kUp, 305.6421}, {kToWindow, 693.1679}, {kUpToWindow, 706.2653}, {kLeft, 95.1666}, {kRight, 95.1666}});
}

TEST(WindowLight, never_reaches_a_meter_that_faces_away_or_down) {
  const Scene scene(black_room(window_on_the_table()));
  EXPECT_EQ(read(scene, flat_meter({0, 1, 0}, kAway)).value(), 0.0);
  EXPECT_EQ(read(scene, flat_meter({0, 1, 0}, kDown)).value(), 0.0);
}

TEST(WindowLight, over_a_raised_sill_has_the_closed_form_value) {
  expect_all(
      in_window_wall(-0.6, 0.6, 0.3, 1.5), {0, 1, 0},
      {{kUp, 321.3887}, {kToWindow, 456.0678}, {kUpToWindow, 549.7448}, {kLeft, 63.4836}, {kRight, 63.4836}});
}

TEST(WindowLight, from_a_window_that_the_meters_horizon_cuts_is_clipped_there) {
  expect_all(
      in_window_wall(-0.5, 0.5, -0.3, 0.9), {0.2, 0.6, 0.1},
      {{kUp, 392.2540}, {kDown, 178.3274}, {kToWindow, 1426.0854}, {kLeft, 391.8896}, {kRight, 126.7714}});
}

TEST(WindowLight, falls_off_along_the_table_as_the_closed_form_says) {
  struct Row {
    double y_m, up_lx, to_window_lx;
  };
  const Scene scene(black_room(window_on_the_table()));
  for (const auto& [y_m, up_lx, to_window_lx] :
       {Row{0.2, 1173.7197, 1481.9858}, Row{0.3, 997.6115, 1387.1867}, Row{0.5, 709.7474, 1162.6200},
        Row{0.8, 424.8137, 853.6660}, Row{1.0, 305.6421, 693.1679}, Row{1.5, 144.1015, 426.3924},
        Row{2.0, 75.5500, 279.4264}, Row{3.0, 26.9235, 141.4955}, Row{4.0, 12.2106, 83.7865},
        Row{10.0, 0.849712, 14.2296}}) {
    const Point at{0, y_m, 0};
    EXPECT_NEAR(kPi * 1000.0 * 2.0 * perpendicular_corner(1.2, 0.6, y_m), up_lx, 1e-4 * up_lx);
    EXPECT_NEAR(kPi * 1000.0 * 2.0 * parallel_corner(1.2, 0.6, y_m), to_window_lx, 1e-4 * to_window_lx);
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, kUp)), up_lx)) << "facing up at " << y_m << " m";
    EXPECT_TRUE(agrees(read(scene, flat_meter(at, kToWindow)), to_window_lx))
        << "to the window at " << y_m << " m";
  }
}

// Far away a window is a point source: to it L A / y^2; facing up, its middle at half its height: L A h / (2
// y^3).
TEST(WindowLight, falls_off_far_away_by_the_square_and_on_the_table_by_the_cube) {
  const Scene scene(black_room(window_on_the_table()));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0, 60, 0}, kToWindow)), 1000 * 1.44 / 3600.0));
  EXPECT_TRUE(agrees(read(scene, flat_meter({0, 60, 0}, kUp)), 1000 * 1.44 * 0.6 / 216000.0));
}

// A dome's response is (1 + cos) / 2: half the scalar illuminance (the integral of the radiance, L x solid
// angle) and half the light vector's part along its axis. The window's solid angle from there: 0.81267256 sr,
// by the closed form for a rectangle, Omega = 4 atan(ab / (d sqrt(a^2 + b^2 + d^2))) for half sides a, b
// straight ahead (from memory).
TEST(WindowLight, on_a_dome_is_half_the_solid_angle_and_half_the_flat_reading) {
  const Scene scene(black_room(window_on_the_table()));
  const double omega_sr = 2.0 * std::atan(0.6 * 1.2 / std::sqrt(0.36 + 1.44 + 1.0));
  EXPECT_NEAR(omega_sr, 0.81267256, 1e-8);
  EXPECT_TRUE(agrees(read(scene, dome_meter({0, 1, 0}, kToWindow)), 500.0 * omega_sr + 0.5 * 693.1679));
  EXPECT_TRUE(agrees(read(scene, dome_meter({0, 1, 0}, kUp)), 500.0 * omega_sr + 0.5 * 305.6421));
  EXPECT_TRUE(agrees(read(scene, dome_meter({0, 1, 0}, kAway)), 500.0 * omega_sr - 0.5 * 693.1679));
}

}  // namespace
}  // namespace fillside::tests
