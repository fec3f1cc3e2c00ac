#include "libsim/view/glare.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

TEST(Glare, as_much_light_again_is_one_stop) {
  Glare glare;
  glare.added_cd_m2 = 100.0, glare.otherwise_cd_m2 = 100.0;
  EXPECT_DOUBLE_EQ(glare.added_stops().value(), 1.0);
  EXPECT_DOUBLE_EQ(added_stops(200.0, 100.0, 0.0), 1.0);
  EXPECT_DOUBLE_EQ(added_stops(200.0, 0.0, 0.0), 0.0);
}

TEST(Glare, the_grain_of_a_picture_does_not_pass_for_darkness) {
  // The picture happens to be darker than what is mirrored alone: counted over the least that is there.
  EXPECT_DOUBLE_EQ(added_stops(90.0, 100.0, 100.0), 1.0);
}

TEST(Glare, shows_from_a_third_of_a_stop) {
  Glare glare;
  glare.otherwise_cd_m2 = 100.0;
  glare.added_cd_m2 = 100.0 * (std::exp2(1.0 / 3.0) - 1.0) + 0.1;
  EXPECT_TRUE(shows(glare));
  glare.added_cd_m2 = glare.added_cd_m2 - 0.2;
  EXPECT_FALSE(shows(glare));
}

TEST(Glare, over_what_may_be_black_is_told_by_its_least) {
  Glare glare;
  glare.added_cd_m2 = 300.0;
  glare.otherwise_cd_m2 = Estimate(std::array{90.0, -70.0});  // the mean 10, the error bar about a thousand
  EXPECT_FALSE(glare.is_known());
  EXPECT_NEAR(glare.least_stops(), std::log2(1.0 + 300.0 / (10.0 + glare.otherwise_cd_m2.half_width_95())),
              1e-12);
  glare.otherwise_cd_m2 = Estimate(std::array{101.0, 99.0, 100.0, 100.0});
  EXPECT_TRUE(glare.is_known());
  EXPECT_NEAR(glare.added_stops().value(), 2.0, 1e-12);
  EXPECT_LT(glare.least_stops(), 2.0);
  EXPECT_TRUE(shows(glare));
}

TEST(Glare, says_where_in_words) {
  Glare glare;
  glare.thing = "soup", glare.part = "filling", glare.source = "window", glare.by_curtain = true;
  glare.middle = {-0.3, 0.4};
  EXPECT_EQ(thing_text(glare), "soup (filling)");
  EXPECT_EQ(source_text(glare), "window, its curtain");
  EXPECT_EQ(place_text(glare), "left, upper part");
}

TEST(Glare, the_overlay_colours_what_shows_and_greys_the_rest) {
  Picture picture = blank_picture(2, 1);
  for (const int x : {0, 1}) picture.set(x, 0, {0.8, 0.2, 0.1});
  draw_glare(picture, std::array{0.2, 1.2});
  EXPECT_EQ(picture.samples[0], picture.samples[1]);
  EXPECT_EQ(picture.samples[0], picture.samples[2]);
  Picture one_stop = blank_picture(1, 1);
  one_stop.set(0, 0, colour_of_glare(1.0));
  for (const std::size_t channel : {0u, 1u, 2u})
    EXPECT_EQ(picture.samples[3 + channel], one_stop.samples[channel]);
}

TEST(Glare, more_stops_are_lighter_on_the_scale_so_that_it_reads_in_grey) {
  double before = 0.0;
  for (const double step : kGlareSteps_stops) {
    const double light = luminance(colour_of_glare(step));
    EXPECT_GT(light, before);
    EXPECT_EQ(luminance(colour_of_glare(step + 0.01)), light);
    before = light;
  }
}

}  // namespace
}  // namespace fillside
