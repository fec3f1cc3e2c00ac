// Lamps from their words in a scene to their place, strength and colour; and what is near them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/light/chromaticity.h"
#include "libsim/scene/build.h"
#include "libsim/scene/canonical.h"
#include "libsim/scene/check.h"
#include "libsim/scene/lamp_heat.h"
#include "libsim/scene/lamp_placing.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

LampShape placed(const std::string& keys) {
  const Description d = described("[[window]]\n[[lamp]]\n" + keys);
  return place_lamp(d.lamps.front(), place_room(d));
}

std::vector<std::string> found(const std::string& text) {
  std::vector<std::string> texts;
  for (const Problem& problem : check(described(text))) texts.push_back(short_text(problem));
  return texts;
}

TEST(LampPlacing, puts_a_ball_by_clock_and_height) {
  const auto ball =
      std::get<Sphere>(placed("clock = 3\ndistance = \"60 cm\"\nz = \"50 cm\"\ndiameter = \"10 cm\""));
  EXPECT_LT((ball.centre - Point(0.6, 0, 0.5)).norm(), 1e-12);
  EXPECT_NEAR(ball.radius_m, 0.05, 1e-12);
}

TEST(LampPlacing, hangs_what_hangs_so_that_its_top_is_the_drop_below_the_ceiling) {
  // A ceiling of 2.5 m over a table of 75 cm.
  EXPECT_NEAR(std::get<Sphere>(placed("ceiling = true\ndrop = \"30 cm\"")).centre.z(), 1.75 - 0.3 - 0.03,
              1e-12);
  const auto down = std::get<Disc>(placed("ceiling = true\nshape = \"disc\""));
  EXPECT_NEAR(down.centre.z(), 1.73, 1e-12);
  EXPECT_LT((down.normal - Direction(0, 0, -1)).norm(), 1e-12);
  const LampShape aslant = placed("ceiling = true\nshape = \"rectangle\"\nx = \"1 m\"\nfaces = \"dish\"");
  EXPECT_NEAR(bounds_of(mesh_of(aslant)).high.z(), 1.73, 1e-6);
}

TEST(LampPlacing, turns_faces_to_the_dish_or_where_it_is_told) {
  const auto to_dish = std::get<Rectangle>(placed("shape = \"rectangle\"\nx = \"30 cm\"\nz = \"40 cm\""));
  EXPECT_LT((to_dish.normal() - Direction(-0.6, 0, -0.8)).norm(), 1e-12);
  EXPECT_NEAR(to_dish.half_u.z(), 0.0, 1e-12) << "its width is level";
  EXPECT_NEAR(to_dish.half_u.norm(), 0.15, 1e-12);
  const auto by_clock = std::get<Disc>(
      placed("shape = \"disc\"\nx = \"30 cm\"\nfaces = \"clock\"\nfaces_clock = 12\nelevation = \"30 deg\""));
  EXPECT_LT((by_clock.normal - Direction(0, std::cos(kPi / 6), 0.5)).norm(), 1e-12);
}

TEST(LampStrength, is_the_same_light_whichever_way_it_is_told) {
  const std::string place = "[[window]]\n[[lamp]]\nx = \"30 cm\"\n";
  const auto strength = [&](const std::string& key) {
    const Description d = described(place + key);
    return luminance(radiance_of(d.lamps.front(), place_lamp(d.lamps.front(), place_room(d))));
  };
  const double by_flux = strength("lumens = \"800 lm\"");
  // A ball of 800 lm has 800 / 4 pi cd.
  EXPECT_NEAR(strength("lux = \"" + std::to_string(800 / (4 * kPi)) + " lx\"\nat = \"1 m\""), by_flux,
              1e-3 * by_flux);
  EXPECT_NEAR(strength("luminance = \"1234 cd/m2\""), 1234.0, 1e-9);
}

TEST(LampColour, is_that_of_its_temperature_and_leaves_its_strength_alone) {
  const Description d =
      described("[[window]]\n[[lamp]]\nx = \"30 cm\"\nluminance = \"100 cd/m2\"\ntemperature = \"2700 K\"");
  const Rgb radiance = radiance_of(d.lamps.front(), place_lamp(d.lamps.front(), place_room(d)));
  EXPECT_NEAR(luminance(radiance), 100.0, 1e-9);
  EXPECT_GT(radiance[0], 2.0 * radiance[2]);
  EXPECT_NEAR(correlated_temperature_K(chromaticity_of(radiance)), 2700.0, 20.0);
}

TEST(LampBuild, that_is_off_stands_there_dark_and_one_that_is_not_used_not_at_all) {
  const std::string lamp = "[[window]]\n[[lamp]]\nname = \"bulb\"\nx = \"30 cm\"\nlumens = \"800 lm\"\n";
  const Scene on = build(described(lamp + "on = true")).scene, off = build(described(lamp)).scene;
  const Scene gone = build(described(lamp + "on = true\nused = false")).scene;
  EXPECT_THAT(on.emitters(), SizeIs(2));
  EXPECT_THAT(off.emitters(), SizeIs(1));
  EXPECT_EQ(on.surfaces().size(), off.surfaces().size());
  EXPECT_EQ(gone.surfaces().size() + 1, off.surfaces().size());
  EXPECT_EQ(on.sources().back().name, "bulb");
}

TEST(LampCheck, lets_a_lamp_light_a_room_without_a_window_and_be_the_key) {
  const std::string bulb = "[[lamp]]\nname = \"bulb\"\nceiling = true\nlumens = \"800 lm\"\n";
  EXPECT_THAT(found(bulb + "on = true\n[set]\nkey = \"bulb\""), IsEmpty());
  EXPECT_THAT(found(bulb), SizeIs(1)) << "it is off, so all is dark";
  EXPECT_THAT(found("[[window]]\n[daylight]\noutdoor = \"0 lx\"\n" + bulb + "on = true"), IsEmpty());
  EXPECT_THAT(found("[[window]]\n[set]\nkey = \"bulb\"\n" + bulb), SizeIs(1))
      << "a lamp that is off is no key";
}

TEST(LampCheck, takes_a_set_back_with_all_its_defaults_written_out) {
  for (const std::string keys : {"x = \"30 cm\"", "ceiling = true\nshape = \"disc\"\nfaces = \"down\""}) {
    const Description d = described(
        "[[window]]\ntransmittance = 0.6\n[[window]]\nclock = 3\nglass = \"none\"\n[[meter]]\nx = \"20 cm\"\n"
        "[[lamp]]\nlumens = \"800 lm\"\n" +
        keys);
    EXPECT_THAT(found(canonical_scene(d, true)), IsEmpty());
    EXPECT_EQ(all_values(described(canonical_scene(d, true))), all_values(d));
  }
}

TEST(LampCheck, lets_flat_lamps_stand_beside_things_that_a_box_around_them_would_touch) {
  const std::string disc =
      "[[window]]\n[[food]]\nkind = \"tart\"\n[[lamp]]\nshape = \"disc\"\nfaces = \"down\"\n";
  EXPECT_THAT(found(disc + "z = \"10 cm\""), IsEmpty());
  EXPECT_THAT(found(disc + "z = \"2 cm\""), SizeIs(1));
  // The corner of the square around the disc reaches into the tart's rim, the disc does not.
  EXPECT_THAT(found(disc + "z = \"2 cm\"\nx = \"18 cm\"\ny = \"18 cm\""), IsEmpty());
}

std::vector<HeatedThing> near(const std::string& text) {
  return things_near_lamps(described("[[window]]\n" + text));
}

TEST(LampHeat, is_told_of_boards_and_cloths_within_a_foot_of_a_lamp_that_is_on) {
  const std::string board = "[[board]]\nname = \"fill\"\nsheet = \"A3\"\nclock = 3\ndistance = \"30 cm\"\n";
  const std::string bulb = "[[lamp]]\nname = \"bulb\"\nclock = 3\nz = \"15 cm\"\nlumens = \"800 lm\"\n";
  const auto close = near(board + bulb + "distance = \"50 cm\"\non = true");
  ASSERT_THAT(close, SizeIs(1));
  EXPECT_EQ(close[0].lamp, "lamp \"bulb\"");
  EXPECT_EQ(close[0].thing, "board \"fill\"");
  // 20 cm from the front, less 5 mm of board and 3 cm of ball.
  EXPECT_NEAR(close[0].distance_m, 0.165, 1e-9);
  EXPECT_THAT(near(board + bulb + "distance = \"50 cm\""), IsEmpty()) << "off";
  EXPECT_THAT(near(board + bulb + "distance = \"65 cm\"\non = true"), IsEmpty()) << "far";
}

TEST(LampHeat, is_told_of_curtains_where_they_hang) {
  const std::string curtain = "curtain = \"net\"\n";
  const std::string bulb =
      "[[lamp]]\nclock = 9\nz = \"50 cm\"\ndistance = \"60 cm\"\nlumens = \"800 lm\"\non = true\n";
  EXPECT_THAT(near(curtain + bulb), SizeIs(1));
  EXPECT_THAT(near(curtain + "reveal = \"20 cm\"\n" + bulb), IsEmpty());
  EXPECT_THAT(near(bulb), IsEmpty());
}

TEST(LampHeat, is_measured_from_flat_lamps_too) {
  const std::string board = "[[board]]\nsheet = \"A3\"\nclock = 3\ndistance = \"30 cm\"\n";
  const std::string panel =
      "[[lamp]]\nshape = \"rectangle\"\nclock = 3\nz = \"20 cm\"\nfaces = \"clock\"\nfaces_clock = 9\n"
      "lumens = \"800 lm\"\non = true\n";
  const auto close = near(board + panel + "distance = \"40 cm\"");
  ASSERT_THAT(close, SizeIs(1));
  EXPECT_NEAR(close[0].distance_m, 0.095, 0.002);
}

}  // namespace
}  // namespace fillside
