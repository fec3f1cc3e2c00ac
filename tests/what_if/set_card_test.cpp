// A set card tells all that its set was measured from: rebuilt from the card's own words, the set stands
// where it stood and reads what it read.
#include "libsim/what_if/set_card.h"

#include <gmock/gmock.h>

#include <fstream>

#include "libsim/scene/canonical.h"
#include "libsim/scene/placed_set.h"
#include "libsim/what_if/card_reader.h"
#include "libsim/what_if/set_reading.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::Not;

// What a person may be off by, building from a card (issue: two centimetres); the card itself must be far
// better: a millimetre, and a minute of the clock at a metre, which is 4 mm.
constexpr double kBuildersHand_m = 0.02, kCardsOwn_m = 0.005;

/// Odd figures, and one of everything that stands.
const std::string kOddSet = R"toml(
[set]
title = "Odd corners"
seed = 7
reference = "far side"
[daylight]
sky = "thin cloud"
sun_altitude = "31.7 deg"
sun_off_window = "20 deg"
outdoor = "13.4 klx"
sun = false
[room]
depth = "3.47 m"
along = "12.3 cm"
wall_colour = "#d8c8b0"
[[window]]
clock = 9.5
distance = "81.37 cm"
along = "-6.66 cm"
size = "wide"
glass = "triple"
bars_up = 1
cover_top = "20 cm"
curtain = "voile"
reveal = "12 cm"
[[window]]
name = "side (small)"
clock = "12:20"
size = "small"
[table]
surface = "walnut"
gloss = "satin"
width = "1.333 m"
y = "7.77 cm"
[[prop]]
name = "plate"
kind = "plate"
width = "26.6 cm"
[[food]]
name = "loaf \"rye\""
kind = "loaf"
on = "plate"
turn = "-23.45 deg"
parts = { body = "rye crust" }
[[prop]]
name = "cup"
kind = "tumbler"
clock = "1:20"
distance = "24.44 cm"
level = 0.7
[[board]]
name = "fill"
width = "31.07 cm"
height = "22.22 cm"
surface = "white foam board"
reflectance = 0.77
clock = "3:11"
distance = "21.23 cm"
lean = "12.34 deg"
foot_gap = "1.28 cm"
[[board]]
name = "fold"
sheet = "A3"
fold = "97.5 deg"
x = "-12.31 cm"
y = "33.33 cm"
faces = 6
[[board]]
name = "blocker"
sheet = "A4"
surface = "black foam board"
x = "-30.03 cm"
z = "11.11 cm"
lean = "-5.55 deg"
[[board]]
name = "spare"
sheet = "A4"
clock = 6
distance = "40 cm"
used = false
[[diffuser]]
name = "silk"
cloth = "china silk"
sheet = "A3"
clock = 9.5
distance = "50.05 cm"
foot_gap = "2 cm"
[[lamp]]
name = "panel"
on = true
shape = "rectangle"
clock = 4
distance = "70.7 cm"
lumens = "600 lm"
[camera]
elevation = "37.77 deg"
distance = "93.33 cm"
portrait = true
look_x = "-1.54 cm"
focal_length = "85 mm"
aperture = "f/8"
[[meter]]
name = "far side"
clock = 3
distance = "17.49 cm"
z = "13.33 cm"
faces = "clock"
faces_clock = "2:30"
elevation = "14.6 deg"
[anchor]
meter = "far side"
lux = "333 lx"
)toml";

Description shipped(const std::string& name) {
  std::vector<Problem> warnings;
  return load_description(std::string(FILLSIDE_SOURCE_DIR) + "/scenes/" + name + ".toml", {}, warnings);
}

Description odd_set() {
  std::vector<Problem> warnings;
  return load_description_text(kOddSet, "odd.toml", {}, warnings);
}

/// The set built again from nothing but its card.
Description rebuilt(const Description& description) {
  std::vector<Problem> warnings;
  return load_card(card_text(set_card(description)), description.file, warnings);
}

void expect_near(const std::vector<Point>& one, const std::vector<Point>& other, double least_m) {
  ASSERT_EQ(one.size(), other.size());
  for (std::size_t i = 0; i < one.size(); ++i) EXPECT_LT((one[i] - other[i]).norm(), least_m);
}

std::vector<Point> corners_of(const Rectangle& r) {
  return {r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)};
}

void expect_same_places(const Description& a, const Description& b, double least_m) {
  const PlacedSet one(a), other(b);
  ASSERT_EQ(one.sheets.size(), other.sheets.size());
  for (std::size_t i = 0; i < one.sheets.size(); ++i) {
    SCOPED_TRACE(one.sheets[i].name);
    EXPECT_EQ(one.sheets[i].name, other.sheets[i].name);
    expect_near(one.sheets[i].corners(), other.sheets[i].corners(), least_m);
  }
  ASSERT_EQ(one.placing.items().size(), other.placing.items().size());
  for (std::size_t i = 0; i < one.placing.items().size(); ++i) {
    SCOPED_TRACE(one.placing.items()[i].section->name);
    expect_near(corners_of(one.placing.items()[i].item), corners_of(other.placing.items()[i].item), least_m);
  }
  for (std::size_t i = 0; i < one.lamps.size(); ++i)
    expect_near(one.lamps[i].corners(one.room), other.lamps[i].corners(other.room), least_m);
  ASSERT_EQ(a.windows.size(), b.windows.size());
  for (std::size_t i = 0; i < a.windows.size(); ++i)
    expect_near(corners_of(place_opening(a.windows[i], one.room)),
                corners_of(place_opening(b.windows[i], other.room)), least_m);
  for (std::size_t i = 0; i < 4; ++i)
    expect_near(corners_of(one.room.walls[i].rectangle), corners_of(other.room.walls[i].rectangle), least_m);
  expect_near(one.table->corners, other.table->corners, least_m);
  const auto lens = [](const PlacedSet& set) {
    const CameraSection& camera = set.description.camera;
    return Point(camera_looks_at(camera, set.subject_top_m) + camera.distance.si * toward_camera(camera));
  };
  EXPECT_LT((lens(one) - lens(other)).norm(), least_m);
}

/// All meters and patches, and lit:shadow, by shared sample numbers: within their error bars, which shared
/// numbers make far too wide a limit, and within 0.02 stop, which rounding to millimetres may cost. Read to
/// 0.01: a turned loaf shares its places less well than its numbers.
void expect_same_figures(const Description& a, const Description& b) {
  const Effort effort{stops(0.01), {}, 1, 0, false};
  const SetReading one = read_set(a, scene_of(a), effort), other = read_set(b, scene_of(b), effort);
  ASSERT_EQ(one.readings.size(), other.readings.size());
  for (std::size_t i = 0; i < one.readings.size(); ++i) {
    SCOPED_TRACE(one.readings[i].name);
    EXPECT_EQ(one.readings[i].name, other.readings[i].name);
    EXPECT_NEAR(one.readings[i].ev100.value(), other.readings[i].ev100.value(), 0.02);
    EXPECT_NEAR(one.readings[i].ev100.value(), other.readings[i].ev100.value(),
                one.readings[i].ev100.half_width_95() + other.readings[i].ev100.half_width_95());
  }
  EXPECT_NEAR(in_stops(*one.subject_lit_to_shadow()).value(),
              in_stops(*other.subject_lit_to_shadow()).value(), 0.02);
}

TEST(SetCard, the_citrus_tart_rebuilt_from_its_card_stands_and_reads_the_same) {
  const Description tart = shipped("citrus_tart"), again = rebuilt(tart);
  expect_same_places(tart, again, kCardsOwn_m);
  expect_same_figures(tart, again);
}

TEST(SetCard, lentil_soup_rebuilt_from_its_card_stands_and_reads_the_same) {
  const Description soup = shipped("lentil_soup"), again = rebuilt(soup);
  expect_same_places(soup, again, kCardsOwn_m);
  expect_same_figures(soup, again);
}

TEST(SetCard, a_set_of_odd_figures_rebuilt_from_its_card_stands_and_reads_the_same) {
  const Description odd = odd_set(), again = rebuilt(odd);
  expect_same_places(odd, again, kCardsOwn_m);
  expect_same_figures(odd, again);
}

TEST(SetCard, every_shipped_scene_can_be_rebuilt_within_a_builders_hand) {
  for (const std::string name : {"citrus_tart", "dumplings_flat_lay", "first_light", "iced_tea_low_sun",
                                 "iced_tea_sheer", "lentil_soup", "north_window", "pickle_jar", "rye_loaf"}) {
    SCOPED_TRACE(name);
    const Description scene = shipped(name);
    expect_same_places(scene, rebuilt(scene), kBuildersHand_m);
  }
}

TEST(SetCard, what_was_rounded_once_stays_as_it_is) {
  for (const Description& d : {shipped("citrus_tart"), shipped("pickle_jar"), odd_set()}) {
    const Description again = rebuilt(d);
    EXPECT_EQ(card_text(set_card(rebuilt(again))), card_text(set_card(again)));
  }
}

TEST(SetCard, what_a_person_changes_on_the_card_is_what_is_built) {
  std::string text = card_text(set_card(shipped("citrus_tart")));
  const std::string said = "3:00, 18.0 cm from the cross";
  ASSERT_THAT(text, HasSubstr(said));
  text.replace(text.find(said), said.size(), "4:00, 25.0 cm from the cross");
  std::vector<Problem> warnings;
  const Description moved = load_card(text, shipped("citrus_tart").file, warnings);
  ASSERT_EQ(moved.boards.size(), 1u);
  EXPECT_EQ(moved.boards[0].spot.clock, Clock{4.0});
  EXPECT_DOUBLE_EQ(moved.boards[0].spot.distance->si, 0.25);
}

TEST(SetCard, remarks_in_brackets_are_not_read) {
  const Description tart = shipped("citrus_tart");
  std::string text = card_text(set_card(tart));
  const std::string remark = "(18.0 cm right, 0.0 cm back";
  ASSERT_THAT(text, HasSubstr(remark));
  text.replace(text.find(remark), remark.size(), "(99.0 cm left, 1.0 cm front");
  std::vector<Problem> warnings;
  EXPECT_EQ(scene_hash(load_card(text, tart.file, warnings)), scene_hash(rebuilt(tart)));
}

TEST(SetCard, things_that_are_not_used_are_not_on_it) {
  EXPECT_THAT(card_text(set_card(shipped("citrus_tart"))), Not(HasSubstr("\"far\"")));
}

TEST(SetCard, measures_stand_in_the_order_of_building) {
  const std::string text = card_text(set_card(odd_set()));
  std::size_t at = 0;
  for (const char* title :
       {"1. Table and window", "2. Dish", "3. Camera", "4. Boards, cloths and lamps", "5. Curtain"}) {
    EXPECT_NE(text.find(title, at), std::string::npos) << title;
    at = text.find(title, at);
  }
}

TEST(SetCard, a_line_that_says_nothing_known_is_told_with_its_place) {
  std::string text = card_text(set_card(shipped("citrus_tart")));
  const std::string said = "3:00, 18.0 cm from the cross";
  text.replace(text.find(said), said.size(), "somewhere on the right");
  const auto line =
      1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(text.find("somewhere")), '\n');
  try {
    std::vector<Problem> warnings;
    load_card(text, "card.txt", warnings);
    FAIL();
  } catch (const SceneError& error) {
    ASSERT_EQ(error.problems().size(), 1u);
    EXPECT_EQ(error.problems()[0].place.line, line);
    EXPECT_THAT(error.problems()[0].message, HasSubstr("is no line of a set card's board"));
  }
}

TEST(SetCard, a_length_that_is_none_is_refused_as_in_a_scene) {
  std::string text = card_text(set_card(shipped("citrus_tart")));
  const std::string said = "18.0 cm from the cross";
  text.replace(text.find(said), said.size(), "18.0 kg from the cross");
  std::vector<Problem> warnings;
  EXPECT_THROW(load_card(text, "card.txt", warnings), SceneError);
}

TEST(SetCard, prose_without_measures_is_no_card) {
  std::vector<Problem> warnings;
  EXPECT_THROW(load_card("Put the board somewhere.\n", "note.txt", warnings), SceneError);
}

}  // namespace
}  // namespace fillside
