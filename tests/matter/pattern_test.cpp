#include "libsim/matter/pattern.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

/// Grey pixels, row by row from the top left.
Pattern grey_pixels(int width, int height, const std::vector<int>& codes) {
  PixelCodes pixels{width, height, {}};
  for (const int code : codes) pixels.rgb.insert(pixels.rgb.end(), 3, static_cast<std::uint8_t>(code));
  return Pattern(std::move(pixels));
}

/// IEC 61966-2-1:1999, 5.2, eqs. 5 and 6, for a value above 0.04045 and below it.
double by_the_power(int code) { return std::pow((code / 255.0 + 0.055) / 1.055, 2.4); }
double by_the_line(int code) { return code / 255.0 / 12.92; }

TEST(Pattern, its_codes_are_srgb) {
  // The middle of the code values is a fifth of the light, not half of it.
  EXPECT_NEAR(grey_pixels(1, 1, {128}).at(0.3, 0.7)[1], by_the_power(128), 1e-12);
  EXPECT_NEAR(by_the_power(128), 0.2159, 5e-5);
  EXPECT_NEAR(grey_pixels(1, 1, {188}).at(0.0, 0.0)[0], by_the_power(188), 1e-12);
  EXPECT_NEAR(grey_pixels(1, 1, {10}).at(0.0, 0.0)[2], by_the_line(10), 1e-12);
}

TEST(Pattern, red_green_and_blue_are_kept_apart) {
  const Pattern one(PixelCodes{1, 1, {200, 100, 50}});
  const Rgb seen = one.at(0.5, 0.5);
  EXPECT_NEAR(seen[0], by_the_power(200), 1e-12);
  EXPECT_NEAR(seen[1], by_the_power(100), 1e-12);
  EXPECT_NEAR(seen[2], by_the_power(50), 1e-12);
}

TEST(Pattern, no_place_returns_more_than_paint_can) {
  EXPECT_EQ(grey_pixels(1, 1, {255}).at(0.5, 0.5)[0], kMostOfAPattern);
}

TEST(Pattern, the_first_row_is_the_top_one) {
  const Pattern four = grey_pixels(2, 2, {10, 20, 30, 40});
  EXPECT_NEAR(four.at(0.25, 0.75)[0], srgb_decoded(10 / 255.0), 1e-12);
  EXPECT_NEAR(four.at(0.75, 0.75)[0], srgb_decoded(20 / 255.0), 1e-12);
  EXPECT_NEAR(four.at(0.25, 0.25)[0], srgb_decoded(30 / 255.0), 1e-12);
  EXPECT_NEAR(four.at(0.75, 0.25)[0], srgb_decoded(40 / 255.0), 1e-12);
}

TEST(Pattern, half_way_between_two_pixels_lies_the_mean_of_their_light) {
  const Pattern two = grey_pixels(2, 1, {60, 180});
  EXPECT_NEAR(two.at(0.5, 0.5)[0], 0.5 * (by_the_power(60) + by_the_power(180)), 1e-12);
  EXPECT_NEAR(two.at(0.375, 0.5)[0], 0.75 * by_the_power(60) + 0.25 * by_the_power(180), 1e-12);
}

TEST(Pattern, repeats_past_its_edges_without_a_seam) {
  const Pattern two = grey_pixels(2, 1, {60, 180});
  for (const double u : {0.1, 0.4, 0.9}) {
    EXPECT_NEAR(two.at(u + 3.0, 2.5)[0], two.at(u, 0.5)[0], 1e-12);
    EXPECT_NEAR(two.at(u - 4.0, -0.5)[0], two.at(u, 0.5)[0], 1e-12);
  }
  EXPECT_NEAR(two.at(0.0, 0.5)[0], 0.5 * (by_the_power(60) + by_the_power(180)), 1e-12);
}

TEST(Pattern, its_mean_is_that_of_its_light) {
  const Pattern four = grey_pixels(2, 2, {50, 100, 150, 200});
  EXPECT_NEAR(four.mean()[0],
              (by_the_power(50) + by_the_power(100) + by_the_power(150) + by_the_power(200)) / 4.0, 1e-12);
}

TEST(Pattern, scales_to_a_reflectance_in_the_mean) {
  Pattern four = grey_pixels(2, 2, {50, 100, 150, 200});
  const double ratio = four.at(0.25, 0.75)[0] / four.at(0.75, 0.75)[0];
  four.scale_to(0.12);
  EXPECT_NEAR(luminance(four.mean()), 0.12, 1e-12);
  EXPECT_NEAR(four.at(0.25, 0.75)[0] / four.at(0.75, 0.75)[0], ratio, 1e-12);
  four.scale_to(0.9);  // its lightest pixel cannot follow
  EXPECT_LT(luminance(four.mean()), 0.9);
  EXPECT_EQ(four.at(0.75, 0.25)[0], kMostOfAPattern);
}

}  // namespace
}  // namespace fillside
