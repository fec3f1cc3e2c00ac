// What a person should read in the set, worked out on paper.
#include "libsim/what_if/expected_readings.h"

#include <gmock/gmock.h>

#include <cmath>

#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

// ISO 2720:1974: N^2 / t = L S / K, K = 12.5. A card of 18 % in 1000 lx sends back 180 / pi = 57.30 cd/m2; at
// ISO 100 that is N^2 / t = 458.4, EV 8.840.
TEST(ExpectedReadings, a_grey_card_reads_what_iso_2720_says) {
  EXPECT_NEAR(ev100_of_card(Estimate(1000.0), 0.18).value(), std::log2(0.18 * 1000.0 / kPi * 100.0 / 12.5),
              1e-12);
  EXPECT_NEAR(ev100_of_card(Estimate(1000.0), 0.18).value(), 8.840, 0.001);
}

// By hand, at f/5.6 (true 2^2.5): t = 32 / 458.4 = 0.0698 s, on the dial of thirds 1/15 s (1/14.3 is nearer
// to 1/16 = true 1/15 than to 1/12.7 = true 1/13: 0.16 stop against 0.17).
TEST(ExpectedReadings, flat_meters_have_a_grey_card_and_domes_have_none) {
  SetReading set;
  Reading flat, dome, dark, patch;
  flat.name = "dish up", flat.total_lx = Estimate(1000.0), flat.ev100 = ev100_of_flat(flat.total_lx);
  flat.subject_there = false;
  dome.name = "dish dome", dome.kind = ReadingKind::dome, dome.total_lx = Estimate(1320.0);
  dark.name = "dark";
  patch.name = "food lit", patch.kind = ReadingKind::patch, patch.total_lx = Estimate(900.0);
  set.readings = {flat, dome, dark, patch};
  const auto expected = expected_readings(set, f_number(5.6));
  ASSERT_EQ(expected.size(), 2u);
  ASSERT_TRUE(expected[0].grey_card);
  EXPECT_EQ(expected[0].grey_card->iso, 100);
  EXPECT_NEAR(ev100_of(*expected[0].grey_card), 8.840, 1.0 / 6.0) << "within half a step of the dial";
  EXPECT_EQ(expected[0].how, "flat, food away");
  EXPECT_FALSE(expected[1].grey_card);
}

TEST(ExpectedReadings, the_last_step_has_a_row_for_each_meter) {
  const Description d = small_set();
  const Scene scene = scene_of(d);
  const SetReading reading = read_set(d, scene, {stops(1.0), {}, 1, 0, false});
  const CardStep step =
      check_step(reading, plan_exposure(d, scene, reading), expected_readings(reading, d.camera.aperture));
  EXPECT_EQ(step.table.size(), 1u + 5u);
  EXPECT_THAT(step.notes.front(), testing::StartsWith("Expose f/5.6"));
}

}  // namespace
}  // namespace fillside
