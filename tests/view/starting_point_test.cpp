#include "libsim/view/starting_point.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "libsim/view/motion.h"

namespace fillside {
namespace {

// Reciprocity, the definition of the exposure value (ISO 2720:1974): N^2 / t x 100 / S is the same for all.
TEST(Equivalents, all_expose_alike_to_a_third_of_a_stop) {
  const std::array apertures{f_number(2.8), f_number(5.6), f_number(11)};
  const std::array isos{100, 400, 1600};
  const auto all = equivalents(8.0, apertures, isos);
  ASSERT_EQ(all.size(), 9u);
  for (const Settings& each : all) EXPECT_NEAR(ev100_of(each), 8.0, 1e-9);  // whole stops: exactly alike
  EXPECT_EQ(to_text(all[0]), "f/2.8, 1/30 s, ISO 100");
  EXPECT_EQ(to_text(all[8]), "f/11, 1/30 s, ISO 1600");
  for (const Settings& each : equivalents(7.4, apertures, isos))
    EXPECT_LE(std::abs(ev100_of(each) - 7.4), 1.0 / 6.0 + 1e-9);
}

TEST(Equivalents, apertures_around_one_are_whole_stops) {
  std::vector<double> engraved;
  for (const FNumber& n : apertures_around(f_number(5.6))) engraved.push_back(n.si);
  EXPECT_EQ(engraved, (std::vector{2.8, 4.0, 5.6, 8.0, 11.0}));
  EXPECT_EQ(apertures_around(f_number(1.4)).size(), 4u);
}

TEST(StartingPoint, dim_light_gives_a_tripod_setting_and_the_speed_that_a_hand_needs) {
  // EV 6 at f/5.6: 32 / 64 = 1/2 s; at 1/125 s that is six stops of ISO: 6400.
  const StartingPoint start = starting_point(6.0, f_number(5.6), seconds(1.0 / 100.0));
  EXPECT_EQ(to_text(start.at_base_iso), "f/5.6, 0.5 s, ISO 100");
  EXPECT_FALSE(start.steady_by_hand);
  EXPECT_EQ(to_text(start.by_hand), "f/5.6, 1/100 s, ISO 5000");
}

TEST(StartingPoint, is_never_slower_than_a_hand_holds) {
  for (double ev = 0.0; ev < 15.0; ev += 0.27) {
    const StartingPoint start = starting_point(ev, f_number(4), seconds(1.0 / 60.0));
    EXPECT_LE(start.by_hand.shutter.si, 1.0 / 60.0);
    EXPECT_LE(std::abs(ev100_of(start.by_hand) - ev), 1.0 / 6.0 + 1e-9);
    EXPECT_EQ(start.steady_by_hand, start.by_hand.iso == 100);
  }
}

// Common practice: 1 / focal length, and no slower than 1/60 s.
TEST(Motion, hands_hold_one_over_the_focal_length_as_on_the_large_sensor) {
  EXPECT_NEAR(slowest_by_hand(millimetres(100), 1.0).si, 1.0 / 100.0, 1e-12);
  EXPECT_NEAR(slowest_by_hand(millimetres(100), 1.5).si, 1.0 / 150.0, 1e-12);
  EXPECT_NEAR(slowest_by_hand(millimetres(35), 1.0).si, 1.0 / 60.0, 1e-12);
}

// Speed x time. A hand that sprinkles at 0.5 m/s is drawn out by 8 mm at 1/60 s: more than a sesame seed.
TEST(Motion, blur_is_speed_times_time_in_mm_and_in_pixels) {
  const Length blur = motion_blur(0.5, seconds(1.0 / 60.0));
  EXPECT_NEAR(blur.si, 0.5 / 60.0, 1e-12);
  EXPECT_NEAR(in_pixels(blur, centimetres(36), 6000), 6000.0 * 0.5 / 60.0 / 0.36, 1e-9);
  EXPECT_NEAR(shutter_for_blur(0.5, millimetres(0.5)).si, 1.0 / 1000.0, 1e-12);
}

// After 20 cm of free fall: sqrt(2 x 9.80665 x 0.2) = 1.9806 m/s.
TEST(Motion, what_falls_gets_faster_with_the_root_of_its_height) {
  EXPECT_NEAR(falling_speed_m_per_s(centimetres(20)), 1.98057, 1e-5);
}

}  // namespace
}  // namespace fillside
