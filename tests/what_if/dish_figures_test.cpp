#include "libsim/what_if/dish_figures.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "libsim/sensor/instruments.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/glare_reading.h"
#include "libsim/what_if/sun_on_dish.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

const std::string kBlackRoom = R"(
[room]
depth = "3 m"
width = "3 m"
walls = 0
ceiling = 0
floor = 0
[table]
reflectance = 0
width = "90 cm"
[[window]]
clock = 9
distance = "50 cm"
width = "60 cm"
height = "60 cm"
sill = "85 cm"
glass = "none"
[[food]]
name = "cake"
kind = "box"
width = "30 cm"
depth = "20 cm"
height = "6 cm"
)";

Description black_set(const std::string& daylight) {
  std::vector<Problem> warnings;
  return load_description_text(kBlackRoom + daylight, "black.toml", {}, warnings);
}

// Lambert's formula for a rectangle of even luminance, Photometria, 1760, at the nine places.
TEST(FalloffOverDish, is_that_of_the_formula_between_its_near_and_far_edge) {
  const Description set = black_set("[daylight]\nwindow_luminance = \"1000 cd/m2\"\n");
  const Rectangle window{{-0.5, 0.0, 0.85 + 0.3 - 0.75}, {0, 0.3, 0}, {0, 0, 0.3}};
  const double height_m = 0.03;
  double low = 1e30, high = 0.0;
  for (int i = -1; i < 8; ++i) {
    const double angle = 0.25 * kPi * i, reach = i < 0 ? 0.0 : 1.0;
    const Point at(reach * 0.15 * std::cos(angle), reach * 0.10 * std::sin(angle), height_m);
    const double factor = tests::polygon_factor(tests::corners_of(window), at, Direction::UnitZ());
    low = std::min(low, factor), high = std::max(high, factor);
  }
  Effort effort;
  effort.precision = stops(0.01);
  const Estimate found = falloff_over_dish(scene_of(set), effort);
  EXPECT_NEAR(found.value(), std::log2(high / low), 4.0 * found.standard_error());
  EXPECT_LT(found.standard_error(), 0.006);
  EXPECT_GT(found.value(), 1.0);
}

// The window's head is 0.70 m over the table and 0.67 m over the meters' level: at an altitude of 45 degrees
// the sun reaches 67 cm in, 17 cm past the dish's middle and so over all of it; at 49.5 degrees 57.2 cm,
// which is short of its last column of places (15 cm past the middle) and of the one before (7.5 cm): 10 of
// 14 places.
TEST(SunlitShare, ends_where_the_windows_head_lets_the_sun_in_to) {
  const auto share = [](const std::string& altitude) {
    const Description set = black_set(
        "[daylight]\nsky = \"clear\"\nsun_off_window = \"0 deg\"\nsun_altitude = \"" + altitude + "\"\n");
    return sunlit_share_of_dish(scene_of(set));
  };
  EXPECT_EQ(share("45 deg"), 1.0);
  EXPECT_NEAR(share("49.5 deg"), 10.0 / 14.0, 1e-9);
  EXPECT_EQ(share("66 deg"), 0.0) << "29.8 cm: it does not come to the near edge at 35";
  EXPECT_EQ(sunlit_share_of_dish(scene_of(black_set(""))), 0.0) << "no sun";
}

// An upright sheet 33 cm high, 35 cm before the dish's middle: at 45 degrees its shadow ends where it is as
// far behind the sheet as the sheet is higher than the meters' level, 3 cm: 5 cm before the middle. That
// leaves out the first column of places (15 cm before the middle) and the second: 10 of 14.
TEST(SunlitShare, leaves_out_what_a_board_shades) {
  const std::string
      sun = "[daylight]\nsky = \"clear\"\nsun_off_window = \"0 deg\"\nsun_altitude = \"45 deg\"\n",
      sheet = "[[board]]\nclock = 9\ndistance = \"35 cm\"\nwidth = \"60 cm\"\nheight = \"33 cm\"\n";
  EXPECT_EQ(sunlit_share_of_dish(scene_of(black_set(sun))), 1.0);
  EXPECT_NEAR(sunlit_share_of_dish(scene_of(black_set(sun + sheet))), 10.0 / 14.0, 1e-9);
  const std::string even = "[daylight]\nwindow_luminance = \"1 cd/m2\"\n";
  const Scene open = scene_of(black_set(even)), shaded = scene_of(black_set(even + sheet));
  const Direction to_sun = Direction(-1.0, 0.0, 1.0).normalized();
  EXPECT_EQ(DishFootprint(open).sunlit_share(open, to_sun), 1.0);
  EXPECT_NEAR(DishFootprint(shaded).sunlit_share(shaded, to_sun), 10.0 / 14.0, 1e-9);
}

/// A figure by its name; not a number when there is none.
double figure(const Description& description, const std::string& name, const Effort& effort) {
  const Scene scene = scene_of(description);
  const SetReading reading = read_set(description, scene, effort);
  for (const NamedFigure& each : figures_of(description, scene))
    if (each.name == name) return each.value({description, scene, reading}, effort).value();
  return std::nan("");
}

// EV is log2 of the light (ISO 2720), so that the two readings' difference is what one is under the other.
TEST(StopsUnder, is_the_difference_of_exposure_values_and_above_zero_where_it_is_darker) {
  const Description set = small_set();
  const Effort effort{.precision = stops(0.1), .seconds = {}, .seed = 1, .threads = 2};
  const double under = figure(set, "meter.dish away.stops_under", effort);
  EXPECT_NEAR(
      under, figure(set, "meter.dish up.ev100", effort) - figure(set, "meter.dish away.ev100", effort), 1e-6);
  EXPECT_GT(under, 0.3);
}

TEST(GlareShare, is_that_of_the_most_covered_part_and_nothing_on_a_matte_cake) {
  const Effort effort{.precision = stops(0.5), .seconds = {}, .seed = 1, .threads = 2};
  EXPECT_EQ(figure(small_set(), "glare.cake.share", effort), 0.0);
  std::vector<Problem> warnings;
  const Description soup = load_description(FILLSIDE_SOURCE_DIR "/scenes/lentil_soup.toml", {}, warnings);
  const Scene scene = scene_of(soup);
  Camera camera = camera_of(soup, scene);  // twice as fine as the figure's
  camera.columns = 192, camera.rows = 128;
  double most = 0.0;
  for (const Glare& glare : read_glare(scene, camera, effort).glares)
    if (glare.thing == "soup") most = std::max(most, 100.0 * glare.share_of_part.value());
  EXPECT_GT(most, 40.0);
  EXPECT_NEAR(figure(soup, "glare.soup.share", effort), most, 2.0);
}

}  // namespace
}  // namespace fillside
