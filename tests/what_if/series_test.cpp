#include "libsim/what_if/series.h"

#include <gmock/gmock.h>

#include <numbers>

#include "libsim/what_if/set_reading.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::ElementsAre;

Effort to(double precision_stops) { return {.precision = stops(precision_stops), .seconds = {}}; }

Estimate read_one(const Description& description, const std::string& figure, double precision_stops,
                  const std::optional<Anchor>& anchor = {}) {
  return read_figures(description, scene_of(description), {figure}, anchor, to(precision_stops))
      .values.front();
}

TEST(Series, two_axes_give_all_combinations_the_last_running_fastest) {
  const std::vector<SeriesAxis> axes{{"a.b", {"1", "2"}}, {"c.d", {"x", "y", "z"}}};
  Series series{axes, {}, points_of(axes)};
  ASSERT_EQ(series.points.size(), 6u);
  EXPECT_THAT(series.points[4].at, ElementsAre(1u, 1u));
  EXPECT_EQ(series.before(3), nullptr) << "the first on the last axis has none before it";
  EXPECT_EQ(series.before(4), &series.points[3]);
}

TEST(Series, the_usual_figures_are_the_ratio_and_the_gain_of_what_is_varied_else_the_level) {
  const Description with_food = small_set(), without_food = small_set("");
  const auto usual = [](const Description& d, const std::string& key) {
    return usual_series_figures(d, scene_of(d), {{key, {"1", "2"}}});
  };
  EXPECT_THAT(usual(with_food, "board.fill.distance"),
              ElementsAre("subject.stops", "board.fill.gain.food shadow"));
  EXPECT_THAT(usual(without_food, "board.distance"),
              ElementsAre("subject.stops", "board.fill.gain.dish away"));
  EXPECT_THAT(usual(with_food, "room.walls"), ElementsAre("subject.stops", "meter.dish up.ev100"));
}

TEST(Series, neighbours_are_told_apart_by_their_difference_not_by_their_own_error_bars) {
  const Estimate a{std::array{1.0, 2.0, 3.0, 4.0}}, b{std::array{1.11, 2.09, 3.1, 4.1}};
  EXPECT_GT(a.half_width_95(), 1.0);
  EXPECT_TRUE(can_be_told_apart(a, b, "stops"));
  EXPECT_FALSE(can_be_told_apart(a, a, "stops"));
  EXPECT_NEAR(step_between(Estimate(100.0), Estimate(400.0), "lx").value(), 2.0, 1e-12);
  EXPECT_NEAR(step_between(Estimate(1.0), Estimate(1.5), "stops").value(), 0.5, 1e-12);
}

/// A room in which only the lamp's own light counts: a ball of 4 cm, level with the meter.
Description lamp_at(double distance_cm) {
  const std::string lamp =
      "[set]\nkey = \"lamp\"\n[[lamp]]\nname = \"lamp\"\non = true\ndiameter = \"4 cm\"\nlumens = \"800 "
      "lm\"\nclock = 3\nz = \"3 cm\"\ndistance = \"" +
      std::to_string(distance_cm) + " cm\"\n[[window]]\nclock = 9\ndistance = \"1 m\"\nsize = \"small\"\n";
  std::vector<Problem> warnings;
  return load_description_text(lamp, "lamp.toml", {}, warnings);
}

// A ball that shines alike all round lights what faces it as if all its flux came from its middle, however
// near: E = flux / (4 pi d^2). Lambert's law for a uniform sphere; Moon, "The Scientific Basis of
// Illuminating Engineering", 1936 (from memory).
TEST(Series, a_small_lamp_follows_the_inverse_square) {
  const auto lx_at = [](double distance_cm) {
    return read_one(lamp_at(distance_cm), "meter.dish window.key_lx", 0.02);
  };
  const Estimate near = lx_at(20.0);
  EXPECT_NEAR(near.value(), 800.0 / (4.0 * std::numbers::pi * 0.2 * 0.2), 2.0);
  for (const double distance_cm : {30.0, 40.0, 80.0, 120.0})
    EXPECT_NEAR(step_between(near, lx_at(distance_cm), "lx").value(), -2.0 * std::log2(distance_cm / 20.0),
                0.005)
        << distance_cm;
}

TEST(Series, an_anchor_is_taken_once_and_kept_for_all_values) {
  const std::string anchored = kFood + "[anchor]\nmeter = \"dish up\"\nlux = \"800 lx\"\n";
  const Description as_written = small_set(anchored);
  const auto anchor = read_set(as_written, scene_of(as_written), to(0.05)).anchor;
  ASSERT_TRUE(anchor);
  EXPECT_NEAR(read_one(as_written, "meter.dish up.lx", 0.05, anchor).value(), 800.0, 1e-3);
  const Description dimmer = small_set(anchored, {"window.window.dirt=0.5"});
  EXPECT_NEAR(read_one(dimmer, "meter.dish up.lx", 0.05, anchor).value(), 400.0, 1e-2);
  EXPECT_NEAR(read_one(dimmer, "meter.dish up.lx", 0.05).value(), 800.0, 1e-3)
      << "its own anchor hides the dirt";
}

TEST(Series, figures_have_titles_in_words) {
  EXPECT_EQ(figure_title("subject.stops"), "lit:shadow of the subject");
  EXPECT_EQ(figure_title("board.fill.gain.food shadow"), "gain of fill at food shadow");
  EXPECT_EQ(figure_title("meter.dish up.lx"), "light at dish up");
  EXPECT_EQ(figure_title("meter.dish up.key_to_fill"), "key:fill at dish up");
  EXPECT_EQ(figure_title("shadow.cake.edge_mm"), "edge of the shadow of cake");
}

}  // namespace
}  // namespace fillside
