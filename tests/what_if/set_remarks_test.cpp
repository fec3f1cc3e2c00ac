// Sets with one thing wrong each, and the remark that it deserves; good sets deserve none.
#include "libsim/what_if/set_remarks.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <filesystem>

#include "libsim/sensor/instruments.h"
#include "libsim/what_if/remarks_on_picture.h"
#include "libsim/what_if/remarks_on_shading.h"
#include "libsim/what_if/remarks_on_standing.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::IsEmpty;

const Effort kQuick{.precision = stops(0.5), .seconds = {}, .seed = 1, .threads = 2};

SetRemarks remarks_on(const std::vector<std::string>& edits, const std::string& more = kFood) {
  const Description description = small_set(more, edits);
  return look_over(description, scene_of(description), kQuick);
}

auto says(const std::string& message) { return Field(&Problem::message, HasSubstr(message)); }

TEST(SetRemarks, a_good_set_has_none) {
  const SetRemarks remarks = remarks_on({"board.fill.distance=30cm"});
  EXPECT_THAT(remarks.warnings, IsEmpty());
  EXPECT_THAT(remarks.cautions, IsEmpty());
}

TEST(SetRemarks, stand_at_the_key_and_carry_its_line) {
  const SetRemarks remarks = remarks_on({});
  ASSERT_THAT(remarks.warnings, ElementsAre(says("it is in the picture at the right")));
  EXPECT_EQ(remarks.warnings[0].place.line, 15);
  EXPECT_EQ(remarks.warnings[0].source_line, "distance = \"15 cm\"");
  EXPECT_EQ(remarks.warnings[0].severity, Severity::warning);
}

// Whoever does as the remark says is rid of it, and a centimetre less is not enough.
TEST(SetRemarks, tell_how_far_to_pull_a_board_out_of_the_picture) {
  for (const char* turn : {"3", "2", "9:30", "10"}) {
    const std::string clock = std::string("board.fill.clock=") + turn;
    const Description before = small_set(kFood, {clock, "board.fill.distance=12cm"});
    const Scene scene = scene_of(before);
    std::uint16_t board = 0;
    while (scene.objects()[board].name != "fill") ++board;
    const double way_m = way_out_of_frame_m(scene, board, camera_of(before, scene)).value();
    ASSERT_GT(way_m, 0.011);
    const auto in_picture = [&](double more_m) {
      SetRemarks remarks;
      const Description moved =
          small_set(kFood, {clock, "board.fill.distance=" + std::to_string(12.0 + 100.0 * more_m) + "cm"});
      remark_on_picture(moved, scene_of(moved), remarks);
      return !remarks.warnings.empty();
    };
    EXPECT_FALSE(in_picture(way_m)) << turn;
    EXPECT_TRUE(in_picture(way_m - 0.015)) << turn;
  }
}

TEST(SetRemarks, a_sheet_right_across_the_frame_is_a_backdrop) {
  EXPECT_THAT(remarks_on({"board.fill.clock=12", "board.fill.sheet=A2", "board.fill.distance=40cm",
                          "camera.elevation=10deg", "camera.distance=80cm"})
                  .warnings,
              IsEmpty());
}

TEST(SetRemarks, food_behind_a_board_is_not_seen) {
  EXPECT_THAT(remarks_on({"board.fill.clock=6", "board.fill.distance=20cm", "board.fill.sheet=A2"}).warnings,
              testing::Contains(AllOf(says("food \"cake\": the camera does not see it"))));
}

TEST(SetRemarks, a_board_before_the_window_hides_the_key) {
  EXPECT_THAT(remarks_on({"board.fill.clock=9", "board.fill.distance=30cm", "board.fill.sheet=A3"}).warnings,
              testing::Contains(says("of the key from the dish")));
}

// By similar triangles: 20 cm before a dish, a ball 16 cm through hides a cone whose half angle has a sine of
// 8 / 20: of a far window that is seen within that cone, all.
TEST(SetRemarks, the_camera_and_whoever_works_it_stand_in_front_light) {
  const std::vector<std::string> front{
      "window.clock=6",       "window.distance=120cm",    "camera.clock=6",          "camera.elevation=20deg",
      "camera.distance=40cm", "camera.focal_length=35mm", "board.fill.distance=40cm"};
  EXPECT_THAT(remarks_on(front).warnings, testing::Contains(says("whoever stands behind it hides")));
  const Description aside = small_set(kFood, {"board.fill.distance=30cm"});
  const Scene scene = scene_of(aside);
  const OperatorShade none = operator_shade(aside, scene, camera_of(aside, scene));
  EXPECT_EQ(none.camera, 0.0);
  EXPECT_EQ(none.person, 0.0);
  Camera near = camera_of(aside, scene);
  const Point dish = dish_place(scene);
  const Direction to_window = (rectangle_of(scene.emitters()[0]).centre - dish).normalized();
  look(near, dish + 0.14 * to_window, dish, Direction::UnitZ());  // its body's middle 20 cm off
  EXPECT_GT(operator_shade(aside, scene, near).camera, 0.4);
}

TEST(SetRemarks, a_cake_at_a_height_of_its_own_hangs_in_the_air) {
  EXPECT_THAT(remarks_on({"food.cake.z=12cm", "board.fill.distance=40cm"}).warnings,
              ElementsAre(says("it hangs in the air, 12 cm over what is below")));
  EXPECT_THAT(remarks_on({"food.cake.z=0cm", "board.fill.distance=40cm"}).warnings, IsEmpty());
}

TEST(SetRemarks, what_stands_on_a_board_stands_unless_it_is_put_beside) {
  const std::string more = kFood + R"(
[[prop]]
name = "tray"
kind = "cutting board"
width = "20 cm"
)";
  const std::vector<std::string> on{"food.cake.on=tray", "board.fill.distance=40cm"};
  EXPECT_THAT(remarks_on(on, more).warnings, IsEmpty());
}

TEST(SetRemarks, a_close_up_wants_a_lens_for_it) {
  const std::vector<std::string> close{"camera.distance=35cm", "board.fill.distance=40cm"};
  EXPECT_THAT(remarks_on(close).warnings, ElementsAre(says("it pictures things at 0.4 of their size")));
  auto known = close;
  known.push_back("camera.closest_focus=30cm");
  EXPECT_THAT(remarks_on(known).warnings, IsEmpty());
}

TEST(SetRemarks, a_camera_close_under_the_ceiling_has_no_room_for_its_body) {
  const std::vector<std::string> high{"camera.view=overhead", "camera.distance=169cm",
                                      "board.fill.distance=40cm"};  // the ceiling is 1.75 m over the table
  const SetRemarks remarks = remarks_on(high);
  EXPECT_THAT(remarks.warnings, ElementsAre(says("between the lens and the ceiling behind it")));
  EXPECT_THAT(remarks.cautions, ElementsAre(says("over the floor")));
}

TEST(SetRemarks, no_light_is_told) {
  EXPECT_THAT(remarks_on({"daylight.window_luminance=0.001 cd/m2", "board.fill.distance=40cm"}).warnings,
              ElementsAre(says("no light reaches the dish")));
}

const std::string kSunny = kFood + R"(
[daylight]
sky = "clear"
sun_altitude = "30 deg"
sun_off_window = "0 deg"
)";

TEST(SetRemarks, foil_and_glass_in_the_sun_want_care) {
  const std::vector<std::string> foil{"board.fill.surface=crumpled kitchen foil", "board.fill.distance=30cm"};
  EXPECT_THAT(remarks_on(foil, kSunny).cautions,
              ElementsAre(says("the sun falls on it, and it throws it on")));
  EXPECT_THAT(remarks_on(foil).cautions, IsEmpty()) << "no sun";
  auto away = foil;
  away.push_back("daylight.sun_off_window=80deg");
  EXPECT_THAT(remarks_on(away, kSunny).cautions, IsEmpty()) << "the sun looks in elsewhere";
  const std::string glass = kSunny + "[[prop]]\nname = \"glass\"\nkind = \"tumbler\"\nx = \"-15 cm\"\n";
  EXPECT_THAT(remarks_on({"board.fill.distance=30cm"}, glass).cautions,
              ElementsAre(says("glass and liquid gather it")));
}

TEST(SetRemarks, a_window_mirrored_over_the_soup_is_told_with_a_way_to_lose_it) {
  std::vector<Problem> warnings;
  const Description soup = load_description(FILLSIDE_SOURCE_DIR "/scenes/lentil_soup.toml", {}, warnings);
  const SetRemarks remarks = look_over(soup, scene_of(soup), kQuick);
  ASSERT_THAT(remarks.warnings, ElementsAre(says("mirrored over")));
  EXPECT_THAT(remarks.warnings[0].remedy, HasSubstr("camera"));
}

// The soup's mirror is its question; all other shipped sets are as their makers meant them.
class ShippedSet : public testing::TestWithParam<std::string> {};
TEST_P(ShippedSet, has_no_warnings) {
  std::vector<Problem> warnings;
  const Description description =
      load_description(FILLSIDE_SOURCE_DIR "/scenes/" + GetParam() + ".toml", {}, warnings);
  EXPECT_THAT(look_over(description, scene_of(description), kQuick).warnings, IsEmpty());
}
std::vector<std::string> shipped_sets() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(FILLSIDE_SOURCE_DIR "/scenes"))
    if (entry.path().extension() == ".toml" && entry.path().stem() != "lentil_soup")
      names.push_back(entry.path().stem().string());
  std::ranges::sort(names);
  return names;
}
INSTANTIATE_TEST_SUITE_P(SetRemarks, ShippedSet, testing::ValuesIn(shipped_sets()),
                         [](const auto& scene) { return scene.param; });

}  // namespace
}  // namespace fillside
