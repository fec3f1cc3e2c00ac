#include "libsim/view/anchor.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fillside {
namespace {

AnchorSection settings(double aperture, double shutter_s, int iso, const char* reading = "incident") {
  AnchorSection anchor;
  anchor.aperture = f_number(aperture);
  anchor.shutter = seconds(shutter_s);
  anchor.iso = iso;
  anchor.reading = reading;
  return anchor;
}

TEST(Anchor, a_lux_reading_is_what_the_meter_is_to_read) {
  AnchorSection anchor;
  anchor.lux = lux(380.0);
  EXPECT_EQ(anchored_illuminance(anchor, ReadingKind::flat).si, 380.0);
  EXPECT_EQ(anchor_meter(anchor), "dish up");
}

// ISO 2720:1974: E = C N^2 / (S t). f/8 at 1/4 s, ISO 100, flat: 250 x 64 x 4 / 100 = 640 lx.
TEST(Anchor, an_incident_reading_counts_by_its_receptors_constant) {
  EXPECT_NEAR(anchored_illuminance(settings(8, 0.25, 100), ReadingKind::flat).si, 640.0, 1e-9);
  EXPECT_NEAR(anchored_illuminance(settings(8, 0.25, 100), ReadingKind::dome).si, 640.0 * 330 / 250, 1e-9);
  EXPECT_NEAR(anchored_illuminance(settings(8, 0.25, 400), ReadingKind::flat).si, 160.0, 1e-9);
}

// ISO 2720:1974: L = K N^2 / (S t) = 12.5 x 64 x 4 / 100 = 32 cd/m2 off a matte card: E = pi L / reflectance.
TEST(Anchor, a_reflected_reading_counts_by_its_card) {
  EXPECT_NEAR(anchored_illuminance(settings(8, 0.25, 100, "reflected"), ReadingKind::flat).si,
              std::numbers::pi * 32.0 / 0.18, 1e-9);
  AnchorSection white = settings(8, 0.25, 100, "reflected");
  white.reflectance = 0.9;
  EXPECT_NEAR(anchored_illuminance(white, ReadingKind::flat).si, std::numbers::pi * 32.0 / 0.9, 1e-9);
}

// f/5.6 and 1/13 s are 2^(5/2) and 2^(-11/3): the marks stand for those.
TEST(Anchor, marks_stand_for_true_stops) {
  EXPECT_NEAR(anchored_illuminance(settings(5.6, 1.0 / 13.0, 125), ReadingKind::flat).si,
              250.0 * 32.0 * std::exp2(11.0 / 3.0) / (100.0 * std::exp2(1.0 / 3.0)), 1e-9);
}

TEST(Anchor, moves_all_light_by_the_stops_between_reading_and_set_and_says_when_that_is_far) {
  AnchorSection section;
  section.lux = lux(400.0);
  section.meter = "shadow";
  const Anchor anchor = anchor_of(section, ReadingKind::flat, 800.0);
  EXPECT_DOUBLE_EQ(anchor.factor, 0.5);
  EXPECT_DOUBLE_EQ(anchor.moved().si, -1.0);
  EXPECT_TRUE(anchor.is_plausible());
  EXPECT_EQ(anchor.meter, "shadow");
  EXPECT_FALSE(anchor_of(section, ReadingKind::flat, 1700.0).is_plausible());
  EXPECT_FALSE(anchor_of(section, ReadingKind::flat, 90.0).is_plausible());
}

}  // namespace
}  // namespace fillside
