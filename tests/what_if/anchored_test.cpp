#include "libsim/what_if/anchored.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/what_if/exposure_plan.h"
#include "libsim/what_if/set_reading.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

SetReading read(const std::string& more) {
  const Description description = small_set(kFood + more);
  return read_set(description, scene_of(description), {.precision = stops(0.3), .seconds = {}});
}

TEST(Anchored, the_reading_comes_back_exactly_and_all_else_moves_by_the_same_stops) {
  const SetReading plain = read(""), anchored = read("[anchor]\nlux = \"380 lx\"\n");
  ASSERT_TRUE(anchored.anchor);
  EXPECT_FALSE(plain.anchor);
  EXPECT_NEAR(anchored.named(kDishUp)->total_lx.value(), 380.0, 1e-4);
  const double moved = anchored.anchor->moved().si;
  EXPECT_NEAR(moved, std::log2(380.0 / plain.named(kDishUp)->total_lx.value()), 1e-6);
  for (const Reading& each : plain.readings) {
    const Reading& scaled = *anchored.named(each.name);
    EXPECT_NEAR(scaled.ev100.value() - each.ev100.value(), moved, 1e-5) << each.name;
    EXPECT_NEAR(std::log2(scaled.fill_lx.value() / each.fill_lx.value()), moved, 1e-5) << each.name;
    if (each.key_lx.value() > 0.0) {
      EXPECT_NEAR(scaled.key_to_fill.value() / each.key_to_fill.value(), 1.0, 1e-5) << each.name;
    }
    EXPECT_NEAR(scaled.total_lx.half_width_95() / each.total_lx.half_width_95(), std::exp2(moved), 1e-4);
  }
  EXPECT_NEAR(anchored.food_lit_to_shadow->value(), plain.food_lit_to_shadow->value(), 1e-5);
}

TEST(Anchored, camera_settings_come_back_as_the_same_settings) {
  const SetReading set =
      read("[anchor]\nmeter = \"dish dome\"\naperture = \"f/5.6\"\nshutter = \"1/13 s\"\niso = 400\n");
  EXPECT_EQ(to_text(settings_for(set.named(kDishDome)->ev100.value(), f_number(5.6), 400)),
            "f/5.6, 1/13 s, ISO 400");
  EXPECT_NEAR(set.named(kDishDome)->ev100.value(), std::log2(32.0) + 11.0 / 3.0 - 2.0, 1e-6);
}

TEST(Anchored, an_own_meter_can_be_the_anchor) {
  const SetReading set = read(
      "[[meter]]\nname = \"left\"\nclock = 9\ndistance = \"20 cm\"\n"
      "[anchor]\nmeter = \"left\"\nlux = \"1 klx\"\n");
  EXPECT_NEAR(set.named("left")->total_lx.value(), 1000.0, 1e-3);
}

TEST(Anchored, an_anchor_without_light_is_the_owners_mistake) {
  EXPECT_THROW(read("[daylight]\nwindow_luminance = \"0 cd/m2\"\n[anchor]\nlux = \"380 lx\"\n"), SceneError);
}

}  // namespace
}  // namespace fillside
