#include "libsim/base/colour.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace fillside {
namespace {

// IEC 61966-2-1:1999, section 5.2: the curve and its knee; figures worked out from it.
TEST(Srgb, code_values_are_those_of_the_standard) {
  EXPECT_NEAR(srgb_encoded(0.18), 0.46135613, 1e-8);
  EXPECT_NEAR(srgb_encoded(0.5), 0.73535698, 1e-8);
  EXPECT_NEAR(srgb_encoded(0.01), 0.09985282, 1e-8);
  EXPECT_EQ(std::lround(255 * srgb_encoded(0.18)), 118);
  EXPECT_NEAR(srgb_decoded(118 / 255.0), 0.18116424, 1e-8);
  EXPECT_NEAR(srgb_decoded(128 / 255.0), 0.21586050, 1e-8);
  EXPECT_NEAR(srgb_decoded(0.5), 0.21404114, 1e-8);
}

TEST(Srgb, the_two_pieces_of_the_curve_meet_at_the_knee) {
  EXPECT_NEAR(srgb_encoded(0.0031308), 0.04045, 1e-6);
  EXPECT_NEAR(srgb_encoded(std::nextafter(0.0031308, 1.0)), srgb_encoded(0.0031308), 1e-7);
  EXPECT_NEAR(srgb_decoded(std::nextafter(0.04045, 1.0)), srgb_decoded(0.04045), 1e-7);
}

TEST(Srgb, all_256_codes_come_back) {
  for (int code = 0; code < 256; ++code)
    EXPECT_EQ(std::lround(255 * srgb_encoded(srgb_decoded(code / 255.0))), code);
}

TEST(Srgb, what_lies_outside_black_and_white_is_cut_to_them) {
  EXPECT_EQ(srgb_encoded(-1.0), 0.0);
  EXPECT_DOUBLE_EQ(srgb_encoded(7.0), 1.0);
  EXPECT_DOUBLE_EQ(srgb_decoded(7.0), 1.0);
}

// ITU-R BT.709-6 (2015), item 3.2.
TEST(Luminance, has_the_weights_of_rec_709_and_white_is_one) {
  EXPECT_DOUBLE_EQ(luminance({1, 0, 0}), 0.2126);
  EXPECT_DOUBLE_EQ(luminance({0, 1, 0}), 0.7152);
  EXPECT_DOUBLE_EQ(luminance({0, 0, 1}), 0.0722);
  EXPECT_DOUBLE_EQ(luminance(grey(1.0)), 1.0);
}

TEST(HexColour, is_read_as_linear_light) {
  Rgb colour;
  ASSERT_TRUE(parse_hex_colour("#ff8000", colour));
  EXPECT_DOUBLE_EQ(colour[0], 1.0);
  EXPECT_NEAR(colour[1], 0.21586050, 1e-8);
  EXPECT_EQ(colour[2], 0.0);
  EXPECT_TRUE(parse_hex_colour("#FF8000", colour));
}

TEST(HexColour, other_texts_are_refused_and_leave_the_colour_alone) {
  for (const char* text :
       {"", "#", "#fff", "ff8000", "#ff80000", "#gg0000", "#-1-1-1", "#-0-0-0", "# f f f", "#+f+f+f"}) {
    Rgb colour = grey(0.25);
    EXPECT_FALSE(parse_hex_colour(text, colour)) << text;
    EXPECT_EQ(colour[0], 0.25);
  }
}

TEST(ScaledToReflectance, keeps_the_hue_and_hits_the_luminance) {
  const Rgb hue(0.4, 0.2, 0.1), scaled = scaled_to_reflectance(hue, 0.3);
  EXPECT_NEAR(luminance(scaled), 0.3, 1e-15);
  EXPECT_NEAR(scaled[0] / scaled[1], 2.0, 1e-14);
  EXPECT_NEAR(scaled[1] / scaled[2], 2.0, 1e-14);
}

TEST(ScaledToReflectance, black_has_no_hue_and_becomes_grey) {
  EXPECT_TRUE((scaled_to_reflectance(grey(0.0), 0.3) == grey(0.3)).all());
}

RC_GTEST_PROP(ScaledToReflectance, never_returns_more_light_than_comes_in,
              (unsigned r, unsigned g, unsigned b)) {
  const Rgb hue(r % 256 / 255.0, g % 256 / 255.0, b % 256 / 255.0);
  RC_ASSERT(scaled_to_reflectance(hue, 0.9).maxCoeff() <= 1.0);
}

}  // namespace
}  // namespace fillside
