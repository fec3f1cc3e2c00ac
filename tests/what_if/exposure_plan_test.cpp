#include "libsim/what_if/exposure_plan.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/chromaticity.h"
#include "libsim/view/clipping.h"
#include "libsim/view/developed.h"
#include "libsim/what_if/white_balance.h"
#include "tests/what_if/small_set.h"

namespace fillside {
namespace {

ExposurePlan plan(const std::string& camera, const std::string& more = kFood) {
  const Description description =
      small_set(more + "[anchor]\nmeter = \"dish dome\"\nlux = \"660 lx\"\n" + camera);
  const Scene scene = scene_of(description);
  return plan_exposure(description, scene,
                       read_set(description, scene, {.precision = stops(0.3), .seconds = {}}));
}

// ISO 2720:1974 with C = 330: 660 lx at the dome are EV100 log2(200) = 7.6439. At 1 m the 100 mm lens is
// racked out to m = 1/9: 2 log2(10/9) = 0.3040 stop less (Ray, "Applied Photographic Optics", from memory).
TEST(ExposurePlan, starts_from_the_dome_less_what_close_focus_costs) {
  const ExposurePlan found = plan("[camera]\naperture = \"f/8\"\n");
  EXPECT_EQ(found.metered.meter, "dish dome");
  EXPECT_NEAR(found.metered.ev100, std::log2(200.0), 1e-5);
  EXPECT_NEAR(found.close_focus_loss.si, 2.0 * std::log2(10.0 / 9.0), 1e-9);
  EXPECT_NEAR(found.ev100, 7.3398, 1e-3);
  // 64 / 2^7.3398 = 0.395 s; by hand 1/100 s: 32.1 times as fast, so ISO 3200 and the next third.
  EXPECT_EQ(to_text(found.start.at_base_iso), "f/8, 0.4 s, ISO 100");
  EXPECT_FALSE(found.start.steady_by_hand);
  EXPECT_EQ(found.start.by_hand.iso, 4000);
  EXPECT_EQ(found.equivalents.size(), found.apertures.size() * found.isos.size());
}

TEST(ExposurePlan, a_flat_lay_is_metered_with_the_flat_disc) {
  const ExposurePlan found = plan("[camera]\nview = \"overhead\"\n");
  EXPECT_EQ(found.metered.meter, "dish camera");
  EXPECT_EQ(found.metered.constant, kFlatConstant);
}

// The camera's own meter takes a white plate for an eighth grey: log2(0.85 x 330 / (12.5 pi)) = 2.836 stops.
TEST(ExposurePlan, a_white_plate_fools_the_camera_by_nearly_three_stops) {
  EXPECT_NEAR(plan("").white_plate_fools.si, 2.836, 1e-3);
}

TEST(ExposurePlan, more_headroom_leaves_white_as_much_more) {
  const ExposurePlan usual = plan(""), wide = plan("[camera]\nheadroom = \"4.26 stops\"\n");
  ASSERT_EQ(usual.whites.size(), 2u);
  EXPECT_NEAR(wide.whites[0].stops_left.value() - usual.whites[0].stops_left.value(),
              4.26 - standard_headroom().si, 1e-9);
}

// What close focus takes from the sensor is dialled in again: the white lies as near its limit as from far
// off, but for what the dial rounds, a sixth of a stop each time.
TEST(ExposurePlan, leaves_white_as_much_in_close_focus_as_far_off) {
  const ExposurePlan far = plan(""), close = plan("[camera]\ndistance = \"25 cm\"\n");
  ASSERT_GT(close.close_focus_loss.si - far.close_focus_loss.si, 1.0);
  ASSERT_EQ(far.whites.size(), close.whites.size());
  for (std::size_t i = 0; i < far.whites.size(); ++i)
    EXPECT_NEAR(close.whites[i].stops_left.value(), far.whites[i].stops_left.value(), 0.34)
        << far.whites[i].where;
}

TEST(ExposurePlan, the_food_is_covered_by_the_aperture_it_names) {
  const ExposurePlan found = plan("");
  ASSERT_TRUE(found.depth);
  EXPECT_LT(found.depth->nearest.si, 1.0);
  EXPECT_GT(found.depth->farthest.si, 0.95);
  const SharpZone zone = sharp_zone(found.depth->covering, found.confusion);
  EXPECT_NEAR(zone.nearest.si, found.depth->nearest.si, 1e-9);
  EXPECT_NEAR(zone.farthest.si, found.depth->farthest.si, 1e-9);
  EXPECT_FALSE(plan("", "").depth);
}

TEST(ExposurePlan, names_what_is_in_the_picture) {
  const auto in_frame = [](const ExposurePlan& found, const std::string& name) {
    for (const FramedThing& thing : found.things)
      if (thing.name == name) return thing.in_frame;
    return InFrame::outside;
  };
  EXPECT_EQ(in_frame(plan(""), "cake"), InFrame::whole);
  EXPECT_NE(in_frame(plan("[camera]\nfocal_length = \"24 mm\"\n"), "fill"), InFrame::outside);
  EXPECT_EQ(in_frame(plan("[camera]\nfocal_length = \"200 mm\"\n"), "fill"), InFrame::outside);
}

TEST(FocusOn, a_thing_is_sharp_on_its_skin) {
  const Description description =
      small_set(kFood + "[camera]\nview = \"straight-on\"\ndistance = \"60 cm\"\nfocus_on = \"cake\"\n");
  const Scene scene = scene_of(description);
  // Straight on from 60 cm the front of an 8 cm deep box is 56 cm away.
  EXPECT_NEAR(camera_of(description, scene).focus.si, 0.56, 1e-6);
}

// The definition of a grey card: what is grey in the light at the card comes out with three equal channels.
TEST(WhiteBalance, is_the_temperature_or_the_light_at_the_card_or_daylight) {
  const auto white = [](const std::string& camera) {
    const Description d = small_set(kFood + camera, {"room.wall_colour=#d08040"});
    const Scene scene = scene_of(d);
    const SetReading set = read_set(d, scene, {.precision = stops(0.3), .seconds = {}});
    return std::pair(white_of(d, set), set.measurements[2].colour(0, [](auto, auto) { return true; }));
  };
  EXPECT_EQ(white("").first.light[0], 1.0);
  const auto [card, away] = white("[camera]\ngrey_card = \"dish away\"\n");
  const Rgb balanced = balance_for(card.light) * away;
  EXPECT_NEAR(balanced[0] / balanced[1], 1.0, 1e-6);
  EXPECT_NEAR(balanced[2] / balanced[1], 1.0, 1e-6);
  EXPECT_GT(away[0] / away[2], 1.05);  // the walls are orange
  const Rgb warm = white("[camera]\nwhite = \"3200 K\"\n").first.light;
  EXPECT_LT((warm - *light_of_temperature(3200.0)).abs().maxCoeff(), 1e-12);
}

}  // namespace
}  // namespace fillside
