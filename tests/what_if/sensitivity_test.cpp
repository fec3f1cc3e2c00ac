// Slopes of figures against closed forms, and against brute force by other sample numbers for every kind of
// key.
#include "libsim/what_if/sensitivity.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "libsim/scene/check.h"
#include "libsim/scene/spelt_out.h"
#include "libsim/what_if/figure_names.h"
#include "libsim/what_if/set_instruments.h"
#include "libsim/what_if/set_reading.h"
#include "tests/closed_form/configuration_factors.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

Effort to(double precision_stops) { return {.precision = stops(precision_stops), .seconds = {}, .seed = 5}; }

/// One key's slopes.
SensitivityInput slope_of(const Description& description, const std::string& path,
                          std::vector<std::string> figures, double precision_stops) {
  const Sensitivity answer =
      read_sensitivity(description, {std::move(figures), {path}, {}}, to(precision_stops));
  const auto found =
      std::ranges::find_if(answer.inputs, [&](const SensitivityInput& i) { return i.key.path == path; });
  EXPECT_NE(found, answer.inputs.end()) << path;
  return *found;
}

/// An evenly bright hole in the wall of a room that gives nothing back, and no food.
const std::string kEvenWindow = R"(
[daylight]
window_luminance = "1000 cd/m2"
[room]
depth = "6 m"
width = "4 m"
walls = 0
ceiling = 0
floor = 0
[table]
reflectance = 0
[[window]]
clock = 9
distance = "80 cm"
width = "90 cm"
height = "120 cm"
sill = "90 cm"
glass = "none"
)";

Description even_window(const std::vector<std::string>& edits = {}) {
  std::vector<Problem> warnings;
  return load_description_text(kEvenWindow, "even.toml", edits, warnings);
}

/// log2 of what a meter that looks at that window has of it, by Lambert's formula (configuration_factors.h).
/// The window's wall is the plane y = 0 of the formula; the meter stands 3 cm over a table of 75 cm.
double stops_at(double distance_m, double sill_m = 0.9, double height_m = 1.2, double width_m = 0.9) {
  const double low = sill_m - 0.75 - 0.03, high = low + height_m, half = 0.5 * width_m;
  const tests::Polygon window{{-half, 0, low}, {half, 0, low}, {half, 0, high}, {-half, 0, high}};
  return std::log2(tests::polygon_factor(window, {0, distance_m, 0}, Direction(0, -1, 0)));
}

const std::vector<std::string> kTowardWindow{"meter.dish window.lx"};

TEST(Sensitivity, of_a_windows_distance_is_that_of_lamberts_formula) {
  const SensitivityInput input = slope_of(even_window(), "window.window.distance", kTowardWindow, 5e-4);
  const Estimate& slope = input.slopes.front();
  const double known = (stops_at(input.high) - stops_at(input.low)) / (input.high - input.low);
  EXPECT_LT(slope.half_width_95(), 0.03 * std::abs(known));
  EXPECT_NEAR(slope.value(), known, 4.0 * slope.standard_error());
  // The step is short enough for the slope to be the formula's derivative.
  const double derivative = (stops_at(0.8 + 1e-5) - stops_at(0.8 - 1e-5)) / 2e-5;
  EXPECT_NEAR(known, derivative, 1e-3 * std::abs(derivative));
}

TEST(Sensitivity, of_a_windows_sides_is_that_of_lamberts_formula) {
  const auto expect_slope = [](const char* path, const std::function<double(double)>& stops) {
    const SensitivityInput input = slope_of(even_window(), path, kTowardWindow, 5e-4);
    const double known = (stops(input.high) - stops(input.low)) / (input.high - input.low);
    EXPECT_NEAR(input.slopes.front().value(), known, 4.0 * input.slopes.front().standard_error()) << path;
    EXPECT_GT(std::abs(known), 8.0 * input.slopes.front().standard_error()) << path;
  };
  expect_slope("window.window.sill", [](double sill_m) { return stops_at(0.8, sill_m); });
  expect_slope("window.window.height", [](double height_m) { return stops_at(0.8, 0.9, height_m); });
  expect_slope("window.window.width", [](double width_m) { return stops_at(0.8, 0.9, 1.2, width_m); });
}

TEST(Sensitivity, of_the_level_is_a_stop_a_stop_and_nothing_for_a_ratio) {
  const SensitivityInput input =
      slope_of(small_set(kFood + "[daylight]\nwindow_luminance = \"1 kcd/m2\"\n"),
               "daylight.window_luminance", {"meter.dish up.lx", "subject.stops"}, 1.0);
  EXPECT_NEAR(input.slopes[0].value(), 1.0, 1e-9);
  EXPECT_LT(input.slopes[0].half_width_95(), 1e-9);
  EXPECT_NEAR(input.slopes[1].value(), 0.0, 1e-9);
  EXPECT_LT(input.slopes[1].half_width_95(), 1e-9);
}

// A cloth that returns nothing passes light in proportion to its share: d log2 E / d share = 1 / (share ln
// 2).
TEST(Sensitivity, of_a_cloths_share_is_one_over_the_share) {
  const SensitivityInput input =
      slope_of(even_window({"window.curtain=white cotton sheet", "window.curtain_direct=0",
                            "window.curtain_diffuse=0.5", "window.curtain_reflectance=0"}),
               "window.window.curtain_diffuse", kTowardWindow, 0.01);
  const double known = std::log2(0.55 / 0.45) / 0.1;
  EXPECT_NEAR(input.slopes.front().value(), known, 1e-6);
  EXPECT_NEAR(known, 1.0 / (0.5 * std::numbers::ln2), 0.01 * known);
}

// Glass of a share t square on passes t^(1/c) at an angle whose cosine inside the glass is c (Bouguer's law):
// d log2 / d t = 1 / (t c ln 2). Within 20 degrees of square, c is at least sqrt(1 - (sin 20 / 1.52)^2) =
// 0.974.
TEST(Sensitivity, of_the_glass_is_one_over_its_transmittance) {
  const SensitivityInput input = slope_of(even_window({"window.glass=single", "window.transmittance=0.6",
                                                       "window.distance=3 m", "window.sill=25 cm"}),
                                          "window.window.transmittance", kTowardWindow, 1e-3);
  const double square_on = std::log2(0.65 / 0.55) / 0.1;
  EXPECT_GT(input.slopes.front().value(), square_on);
  EXPECT_LT(input.slopes.front().value(), square_on / 0.974);
}

// One real reading takes the place of the sky's level: the meter reads what the anchor says, whatever the
// weather.
// To 1e-6: readings are kept as floats.
TEST(Sensitivity, of_an_anchored_set_is_to_the_reading_and_not_to_the_sky) {
  const Description set = small_set(kFood + "[anchor]\nlux = \"400 lx\"\n");
  const std::vector<std::string> level{"meter.dish up.ev100"};
  EXPECT_NEAR(slope_of(set, "daylight.outdoor", level, 0.1).slopes.front().value(), 0.0, 1e-6);
  EXPECT_NEAR(slope_of(set, "anchor.lux", level, 0.1).slopes.front().value(), 1.0, 1e-6);
  EXPECT_NEAR(slope_of(set, "window.window.transmittance", level, 0.1).slopes.front().value(), 0.0, 1e-6);
}

const std::vector<std::string> kOnlyTheBoard{
    "room.walls=0",        "room.ceiling=0",          "room.floor=0",
    "table.reflectance=0", "food.cake.reflectance=0", "board.fill.reflectance=0.5"};

TEST(Sensitivity, of_a_reflectance_that_is_all_there_is_is_one_over_it) {
  const SensitivityInput input =
      slope_of(small_set(kFood, kOnlyTheBoard), "board.fill.reflectance", {"meter.dish away.lx"}, 0.01);
  EXPECT_NEAR(input.slopes.front().value(), std::log2(0.55 / 0.45) / 0.1, 1e-4);
}

// In a black room a meter that looks at the window sees the window only.
TEST(Sensitivity, is_nothing_for_what_cannot_matter) {
  for (const char* path : {"table.depth", "room.depth", "board.fill.thickness", "board.fill.reflectance"}) {
    const SensitivityInput input = slope_of(small_set(kFood, kOnlyTheBoard), path, kTowardWindow, 0.01);
    EXPECT_LE(std::abs(input.moves.front().value()), input.moves.front().half_width_95()) << path;
    EXPECT_LE(input.moves.front().half_width_95(), 0.01) << path;
  }
}

TEST(Sensitivity, goes_one_way_where_the_other_ends) {
  const SensitivityInput gap = slope_of(small_set(), "board.fill.foot_gap", {"subject.stops"}, 0.05);
  EXPECT_EQ(gap.low, 0.0);
  EXPECT_GT(gap.high, 0.0);
  const SensitivityInput white = slope_of(small_set(kFood, {"board.fill.reflectance=1"}),
                                          "board.fill.reflectance", {"subject.stops"}, 0.05);
  EXPECT_EQ(white.high, 1.0);
  EXPECT_LT(white.low, 1.0);
  EXPECT_LT(white.slopes.front().value(), 0.0) << "more fill is less contrast";
}

// Brute force: both ends of the step read one by one, by other sample numbers, and many.
Estimate figure_at(const Description& set, const SensitivityInput& input, double on_scale,
                   const std::string& name, std::uint64_t seed) {
  Description changed = spelt_out(set);
  set_number(changed, input.key, off_scale(input.key, on_scale));
  const Scene scene = scene_of(changed);
  const auto known = figures_of(changed, scene);
  const auto figure = *std::ranges::find(known, name, &NamedFigure::name);
  const auto instruments = instruments_named(figure.instruments, changed, scene);
  std::vector<Measurement> measured;
  for (const Instrument& each : instruments)
    measured.push_back(measure(scene, each.sensor, {.samples = 1u << 12, .seed = seed}));
  return figure.value({changed, scene, set_reading_of(changed, scene, instruments, std::move(measured))}, {});
}

struct KindOfKey {
  const char *kind, *path;
};

class SensitivityOfKind : public testing::TestWithParam<KindOfKey> {};

TEST_P(SensitivityOfKind, is_what_brute_force_finds) {
  const Description set = small_set(kFood, {"board.fill.lean=10 deg"});
  const SensitivityInput input = slope_of(set, GetParam().path, {"subject.stops"}, 0.01);
  const Estimate change = input.slopes.front() * (input.high - input.low),
                 from = figure_at(set, input, input.low, "subject.stops", 101),
                 to = figure_at(set, input, input.high, "subject.stops", 102);
  const double error = std::hypot(change.standard_error(), from.standard_error(), to.standard_error());
  EXPECT_LT(error, 0.03);
  EXPECT_NEAR(change.value(), to.value() - from.value(), 4.0 * error);
}

INSTANTIATE_TEST_SUITE_P(
    EveryKind, SensitivityOfKind,
    testing::Values(KindOfKey{"length", "board.fill.distance"}, KindOfKey{"sheet", "board.fill.width"},
                    KindOfKey{"opening", "window.window.height"}, KindOfKey{"food", "food.cake.height"},
                    KindOfKey{"angle", "board.fill.lean"}, KindOfKey{"clock", "board.fill.clock"},
                    KindOfKey{"windows_clock", "window.window.clock"},
                    KindOfKey{"reflectance", "board.fill.reflectance"}, KindOfKey{"walls", "room.walls"},
                    KindOfKey{"transmittance", "window.window.transmittance"},
                    KindOfKey{"level", "daylight.outdoor"}),
    [](const auto& each) { return std::string(each.param.kind); });

// Worked by hand: moves of 0.4, 0.3, 0.1 and 0.01 make sqrt(0.2601) = 0.51; nine tenths of the sum of
// squares, 0.234, are reached by the second (0.25); a tenth of all is 0.051.
TEST(Sensitivity, ranks_by_what_is_at_stake_and_says_what_is_worth_measuring) {
  Sensitivity answer;
  answer.figures = {{"subject.stops", "stops"}};
  for (const double move : {0.01, -0.4, 0.1, 0.3}) {
    SensitivityInput input;
    input.key.value = move;
    input.moves = {Estimate(move)};
    answer.inputs.push_back(input);
  }
  answer.inputs.emplace_back().cannot = "in the way";
  const auto order = answer.ranked(0);
  ASSERT_EQ(order.size(), 4u);
  EXPECT_EQ(order[0]->key.value, -0.4);
  EXPECT_EQ(order[3]->key.value, 0.01);
  EXPECT_NEAR(answer.together(0), 0.51, 1e-12);
  EXPECT_EQ(worths(answer, 0), (std::vector{Worth::measure, Worth::measure, Worth::little, Worth::nothing}));
}

TEST(Sensitivity, puts_the_board_before_the_ceiling) {
  const Sensitivity answer = read_sensitivity(
      small_set(), {{"subject.stops"}, {"board.fill.distance", "room.ceiling"}, {}}, to(0.01));
  ASSERT_EQ(answer.inputs.size(), 2u);
  EXPECT_EQ(answer.ranked(0).front()->key.path, "board.fill.distance");
  EXPECT_GT(answer.ranked(0).front()->slopes.front().value(), 0.0) << "farther off is less fill";
}

TEST(Sensitivity, own_uncertainty_scales_what_is_at_stake_and_nothing_else) {
  const SensitivityTask usual{{"subject.stops"}, {"board.fill.distance"}, {}};
  SensitivityTask own = usual;
  own.off_by["board.fill.distance"] = 0.03;
  const auto a = read_sensitivity(small_set(), usual, to(1.0)),
             b = read_sensitivity(small_set(), own, to(1.0));
  EXPECT_EQ(a.inputs[0].slopes[0].value(), b.inputs[0].slopes[0].value());
  EXPECT_NEAR(b.inputs[0].moves[0].value(), 3.0 * a.inputs[0].moves[0].value(), 1e-12);
}

TEST(SpeltOut, gives_the_same_light_in_every_scene_of_the_collection) {
  for (const char* name : {"citrus_tart", "dumplings_flat_lay", "first_light", "lentil_soup", "rye_loaf",
                           "north_window", "iced_tea_sheer", "pickle_jar"}) {
    std::vector<Problem> warnings;
    const Description written =
        load_description(std::string(FILLSIDE_SOURCE_DIR) + "/scenes/" + name + ".toml", {}, warnings);
    const Description spelt = spelt_out(written);
    for (const Problem& problem : check(spelt))
      EXPECT_NE(problem.severity, Severity::error) << name << ": " << problem.message;
    const auto reading = [](const Description& d) {
      const Scene scene = scene_of(d);
      const auto dish_up = instruments_named({"dish up"}, d, scene);
      return measure(scene, dish_up.front().sensor, {.samples = 16, .seed = 1}).total().value();
    };
    EXPECT_NEAR(reading(spelt) / reading(written), 1.0, 1e-9) << name;
  }
}

TEST(Keys, fit_a_part_of_the_path_or_a_pattern_with_stars) {
  EXPECT_TRUE(fits("board.fill.distance", "fill"));
  EXPECT_TRUE(fits("board.fill.distance", "board.*"));
  EXPECT_TRUE(fits("board.fill.distance", "*.dist*ce"));
  EXPECT_FALSE(fits("board.fill.distance", "*.lean"));
  EXPECT_FALSE(fits("board.fill.distance", "fill.*"));
}

TEST(Uncertainty, is_read_in_the_keys_own_unit) {
  const auto keys = numeric_keys(spelt_out(small_set()));
  const auto key = [&](const char* path) { return *std::ranges::find(keys, path, &NumericKey::path); };
  std::string example;
  EXPECT_NEAR(*parse_uncertainty(key("board.fill.distance"), "3 cm", example), 0.03, 1e-15);
  EXPECT_NEAR(*parse_uncertainty(key("board.fill.clock"), "15 deg", example), 0.5, 1e-12);
  EXPECT_NEAR(*parse_uncertainty(key("board.fill.reflectance"), "0.02", example), 0.02, 1e-15);
  EXPECT_NEAR(*parse_uncertainty(key("daylight.outdoor"), "1/2 stop", example), 0.5, 1e-15);
  EXPECT_FALSE(parse_uncertainty(key("board.fill.distance"), "0.03", example));
  EXPECT_EQ(example, "60 cm");
  EXPECT_FALSE(parse_uncertainty(key("board.fill.reflectance"), "-0.1", example));
}

// What a set leaves to the catalogue is as uncertain as the catalogue says; what it says itself is not.
TEST(Uncertainty, is_the_catalogues_where_the_number_is) {
  const auto of = [](const Description& set, const char* path) {
    const auto keys = numeric_keys(spelt_out(set));
    return usual_uncertainty(set, *std::ranges::find(keys, path, &NumericKey::path))->basis;
  };
  EXPECT_EQ(of(small_set(), "board.fill.reflectance"), "catalogue");
  EXPECT_EQ(of(small_set(kFood, {"board.fill.reflectance=0.7"}), "board.fill.reflectance"), "by eye");
  EXPECT_EQ(of(small_set(), "board.fill.width"), "as cut");
}

}  // namespace
}  // namespace fillside
