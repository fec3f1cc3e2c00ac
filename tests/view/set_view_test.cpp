// A drawn set shows things where they stand and measures them as a ruler would.
#include "libsim/view/set_view.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <cmath>

#include "libsim/base/space.h"
#include "libsim/scene/load.h"

namespace fillside {
namespace {

using testing::Contains;

const std::string kSet = R"(
[[window]]
clock = 9
distance = "80 cm"
width = "90 cm"
height = "120 cm"
sill = "90 cm"
[table]
x = "10 cm"
[[food]]
kind = "box"
width = "10 cm"
depth = "10 cm"
height = "6 cm"
[[board]]
name = "fill"
sheet = "A3"
clock = 3
distance = "18 cm"
lean = "10 deg"
foot_gap = "2 cm"
[[board]]
name = "black"
sheet = "A4"
surface = "black foam board"
clock = 12
distance = "30 cm"
[camera]
elevation = "30 deg"
distance = "1 m"
look_z = "3 cm"
)";

SetView seen(ViewFrom from, const std::string& text = kSet) {
  std::vector<Problem> warnings;
  const Description d = load_description_text(text, "seen.toml", {}, warnings);
  return view_of_set(PlacedSet(d), from);
}

std::vector<std::string> measured(const SetView& view) {
  std::vector<std::string> texts;
  for (const SeenMeasure& m : view.measures) texts.push_back(m.text);
  return texts;
}

const SeenThing& thing(const SetView& view, const std::string& name) {
  return *std::ranges::find(view.things, name, &SeenThing::name);
}

double extent(const SeenThing& thing, std::size_t axis) {
  const auto [low, high] = std::ranges::minmax(thing.path_cm, {}, [&](const auto& p) { return p[axis]; });
  return high[axis] - low[axis];
}

TEST(SetView, distances_from_the_cross_are_those_of_the_scene) {
  const auto texts = measured(seen(ViewFrom::above));
  EXPECT_THAT(texts, Contains("80.0"));  // to the window's wall
  EXPECT_THAT(texts, Contains("18.0"));  // to the board's lower edge
  EXPECT_THAT(texts, Contains("30.0"));  // to the black one's
  EXPECT_THAT(texts, Contains("86.6"));  // below the lens: 100 cos 30
  EXPECT_THAT(texts, Contains("50.0"));  // table edge, left: 120 / 2 - 10
  EXPECT_THAT(texts, Contains("70.0"));  // and right
}

TEST(SetView, heights_are_measured_where_a_thing_is_seen_edge_on) {
  const auto six = measured(seen(ViewFrom::six)), nine = measured(seen(ViewFrom::nine));
  EXPECT_THAT(six, Contains("31.2"));   // upper edge: 2 + 29.7 cos 10
  EXPECT_THAT(six, Contains("2.0"));    // lower edge
  EXPECT_THAT(six, Contains("15.0"));   // sill over a table of 75
  EXPECT_THAT(six, Contains("135.0"));  // head
  EXPECT_THAT(nine, Contains("21.0"));  // the black one stands at 12
  EXPECT_THAT(nine, Contains("53.0"));  // lens: 3 + 100 sin 30
  EXPECT_THAT(nine, testing::Not(Contains("31.2")));
}

TEST(SetView, each_measure_is_as_long_as_it_says) {
  for (const ViewFrom from : {ViewFrom::above, ViewFrom::six, ViewFrom::nine})
    for (const SeenMeasure& m : seen(from).measures)
      EXPECT_NEAR(std::stod(m.text), std::hypot(m.to_cm[0] - m.from_cm[0], m.to_cm[1] - m.from_cm[1]),
                  0.0501);
}

TEST(SetView, a_board_is_as_wide_from_above_and_as_high_from_the_side_as_it_is) {
  EXPECT_NEAR(extent(thing(seen(ViewFrom::above), "fill"), 1), 42.0, 1e-6);
  EXPECT_NEAR(extent(thing(seen(ViewFrom::nine), "fill"), 0), 42.0, 1e-6);
  const double lean = 10.0 * kDegree;
  EXPECT_NEAR(extent(thing(seen(ViewFrom::six), "fill"), 0), 29.7 * std::sin(lean) + 0.5 * std::cos(lean),
              1e-6);
}

TEST(SetView, the_cameras_side_is_at_the_right_from_nine) {
  EXPECT_GT(thing(seen(ViewFrom::nine), "camera").path_cm.front()[0], 80.0);
  EXPECT_LT(thing(seen(ViewFrom::above), "camera").path_cm.front()[1], -80.0);
}

TEST(SetView, what_is_at_the_viewers_back_is_left_out) {
  const auto has_window = [](const SetView& view) {
    return std::ranges::any_of(view.things,
                               [](const SeenThing& t) { return t.kind == SeenThing::Kind::opening; });
  };
  EXPECT_TRUE(has_window(seen(ViewFrom::six)));
  EXPECT_FALSE(has_window(seen(ViewFrom::nine)));
}

TEST(SetView, a_further_window_far_off_is_named_and_not_drawn) {
  const std::string two = kSet + "[[window]]\nname = \"far\"\nclock = 12\nsize = \"small\"\n";
  const SetView view = seen(ViewFrom::above, two);
  EXPECT_THAT(view.not_drawn, testing::ElementsAre("far, 175.0 cm off"));  // half of a room of 3.5 m
  EXPECT_LT(view.high_cm, 100.0);
  EXPECT_TRUE(seen(ViewFrom::above).not_drawn.empty());
}

TEST(SetView, what_is_covered_of_a_window_is_drawn) {
  std::string masked = kSet;
  masked.insert(masked.find("[table]"), "cover_left = \"30 cm\"\ncover_top = \"50 cm\"\n");
  const auto covers = [&](ViewFrom from, std::size_t axis) {
    double sum = 0.0;
    for (const SeenThing& t : seen(from, masked).things)
      if (t.kind == SeenThing::Kind::cover) sum += extent(t, axis);
    return sum;
  };
  EXPECT_NEAR(covers(ViewFrom::above, 1), 30.0, 1e-6);
  EXPECT_NEAR(covers(ViewFrom::six, 1), 50.0, 1e-6);
}

TEST(SetView, dark_boards_are_told_from_light_ones) {
  EXPECT_EQ(thing(seen(ViewFrom::above), "fill").kind, SeenThing::Kind::board);
  EXPECT_EQ(thing(seen(ViewFrom::above), "black").kind, SeenThing::Kind::dark_board);
}

TEST(SetView, all_that_is_drawn_lies_within_it_and_the_floor_is_there_for_what_stands_on_it) {
  for (const ViewFrom from : {ViewFrom::above, ViewFrom::six, ViewFrom::nine}) {
    const SetView view = seen(from);
    for (const SeenThing& t : view.things)
      for (const auto& p : t.path_cm) {
        EXPECT_GE(p[0], view.left_cm);
        EXPECT_LE(p[0], view.right_cm);
        EXPECT_LE(p[1], view.high_cm);
      }
  }
  EXPECT_GT(seen(ViewFrom::six).low_cm, -20.0);
  const std::string standing = kSet +
                               "[[board]]\nname = \"tall\"\nsheet = \"A2\"\nclock = 5\ndistance = \"1.3 m\"\n"
                               "stands = \"floor\"\n";
  EXPECT_NEAR(seen(ViewFrom::six, standing).low_cm, -75.0, 1e-9);
}

}  // namespace
}  // namespace fillside
