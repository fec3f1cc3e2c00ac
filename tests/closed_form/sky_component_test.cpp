// Sky light through an unglazed side window on a horizontal point, the sill in the point's plane. Overcast
// sky: Walsh, The Science of Daylight, 1961; also Tregenza and Sharples, "New Daylight Algorithms",
// algorithm 2.32. The equation itself is from memory; quadrature confirmed it to ten digits.
#include <gtest/gtest.h>

#include "tests/closed_form/agreement.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {
namespace {

/// From the point's normal plane to one side W wide, H high, at distance D; share of the outdoor illuminance.
double overcast_component(double W, double H, double D) {
  const double b = std::atan(W / D), g = std::atan(H / D), b1 = std::atan(std::cos(g) * std::tan(b));
  return 3.0 / (14.0 * kPi) * (b - b1 * std::cos(g)) +
         2.0 / (7.0 * kPi) * std::asin(std::sin(b) * std::sin(g)) -
         1.0 / (7.0 * kPi) * std::sin(2.0 * g) * std::sin(b1);
}

struct SideWindow {
  double width_m, height_m, distance_m, overcast_percent, uniform_percent;
};
constexpr SideWindow kSideWindows[] = {{1.0, 1.0, 1.0, 4.52513751, 5.57341970},
                                       {0.6, 1.2, 1.0, 4.17643156, 4.86444473},
                                       {1.5, 1.2, 2.0, 1.73026730, 2.44181846},
                                       {3.0, 2.0, 4.0, 1.22848571, 1.83041641}};

double measured_percent_error(const SideWindow& w, int sky, double percent) {
  SceneParts parts;
  parts.outside = sky_and_ground(sky, lux(10000), grey(0.0));
  add_window(parts, in_window_wall(0.0, w.width_m, 0.0, w.height_m));
  const Estimate lx = read(Scene(std::move(parts)), flat_meter({0, w.distance_m, 0}, kUp));
  EXPECT_TRUE(agrees(lx, 100.0 * percent)) << w.width_m << " x " << w.height_m << " m";
  return lx.value() / (100.0 * percent) - 1.0;
}

TEST(SkyComponent, of_the_overcast_sky_is_walshs) {
  for (const SideWindow& w : kSideWindows) {
    EXPECT_NEAR(100.0 * overcast_component(w.width_m, w.height_m, w.distance_m), w.overcast_percent, 1e-8);
    EXPECT_LT(std::abs(measured_percent_error(w, kTraditionalOvercast, w.overcast_percent)), 0.005);
  }
}

// An even sky makes the window an even rectangle (configuration_factors.h).
TEST(SkyComponent, of_an_even_sky_is_the_configuration_factor) {
  for (const SideWindow& w : kSideWindows) {
    EXPECT_NEAR(100.0 * perpendicular_corner(w.height_m, w.width_m, w.distance_m), w.uniform_percent, 1e-7);
    EXPECT_LT(std::abs(measured_percent_error(w, kUniformSky, w.uniform_percent)), 0.005);
  }
}

TEST(SkyComponent, of_a_whole_window_is_that_of_its_two_halves) {
  SceneParts parts;
  parts.outside = sky_and_ground(kTraditionalOvercast, lux(10000), grey(0.0));
  add_window(parts, window_on_the_table());
  EXPECT_TRUE(agrees(read(Scene(std::move(parts)), flat_meter({0, 1, 0}, kUp)), 835.286311));
}

}  // namespace
}  // namespace fillside::tests
