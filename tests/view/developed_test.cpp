#include "libsim/view/developed.h"

#include <gtest/gtest.h>

#include <array>
#include <limits>
#include <numbers>

namespace fillside {
namespace {

// What a matte surface of that reflectance sends out under `lx`.
Rgb matte(const Rgb& reflectance, double lx) { return reflectance * lx / std::numbers::pi; }

std::array<int, 3> shown(const Rgb& scene, const Development& development) {
  const Picture picture = developed(std::array{scene}, 1, 1, development);
  return {picture.samples[0], picture.samples[1], picture.samples[2]};
}

TEST(Developed, AGreyCardUnderTheMeteredLightIsCode118OnBothCurves) {
  // ISO 12232:2019, standard output sensitivity: the metered grey is 18 % of full scale, sRGB code value 118.
  for (const double lx : {3.0, 800.0, 50000.0})
    for (const ToneCurve curve : {ToneCurve::plain, ToneCurve::soft_shoulder})
      EXPECT_EQ(shown(matte(grey(0.18), lx), {.metered = lux(lx), .curve = curve}),
                (std::array{118, 118, 118}));
}

TEST(Developed, OneStopLessExposureHalvesTheLinearValue) {
  const auto codes = shown(matte(grey(0.36), 500.0), {.metered = lux(1000.0), .curve = ToneCurve::plain});
  EXPECT_EQ(codes[0], 118);
}

TEST(Developed, WhiteUnderTheMeteredLightIsHeadroom) {
  EXPECT_EQ(shown(matte(grey(1.0), 400.0), {.metered = lux(400.0), .curve = ToneCurve::plain})[0], 255);
  EXPECT_EQ(
      shown(matte(grey(1.0), 400.0), {.metered = lux(400.0), .headroom = 0.5, .curve = ToneCurve::plain})[0],
      188);  // sRGB of 0.5
}

TEST(Developed, TheShoulderKeepsGreyRisesAndEndsAtWhite) {
  for (const double clip_at : {1.5, 2.0, 8.0}) {
    EXPECT_NEAR(soft_shoulder(0.18, clip_at), 0.18, 1e-12);
    EXPECT_NEAR(soft_shoulder(clip_at, clip_at), 1.0, 1e-12);
    EXPECT_EQ(soft_shoulder(0.0, clip_at), 0.0);
    for (double x = 0.01; x < clip_at; x += 0.01)
      EXPECT_GT(soft_shoulder(x, clip_at), soft_shoulder(x - 0.01, clip_at));
  }
  EXPECT_LT(soft_shoulder(1.0, 2.0), 0.8);  // white is held back, so that what is brighter still shows
}

TEST(Developed, TheCurveKeepsTheProportionsOfAColour) {
  const auto codes = shown(matte({0.4, 0.2, 0.1}, 1000.0), {.metered = lux(1000.0)});
  EXPECT_NEAR(srgb_decoded(codes[0] / 255.0) / srgb_decoded(codes[1] / 255.0), 2.0, 0.03);
  EXPECT_NEAR(srgb_decoded(codes[1] / 255.0) / srgb_decoded(codes[2] / 255.0), 2.0, 0.03);
}

TEST(Developed, ABrightColourFadesTowardsWhiteInsteadOfChangingHue) {
  const auto codes = shown(matte({6.0, 3.0, 0.1}, 1000.0), {.metered = lux(1000.0)});
  EXPECT_EQ(codes, (std::array{255, 255, 255}));
  const auto less = shown(matte({2.4, 1.0, 0.1}, 1000.0), {.metered = lux(1000.0)});
  EXPECT_EQ(less[0], 255);
  EXPECT_GT(less[1], less[2]);
  EXPECT_GT(less[2], 100);  // plain clipping would leave blue at 70
}

TEST(Developed, WhiteBalanceMakesTheNeutralGreyAtTheSameLuminance) {
  const Rgb warm(0.24, 0.17, 0.09);
  const Rgb gains = balance_for(warm);
  EXPECT_NEAR(luminance(gains * warm), luminance(warm), 1e-12);
  const auto codes = shown(matte(warm, 100.0), {.metered = lux(100.0), .white_balance = gains});
  EXPECT_EQ(codes[0], codes[1]);
  EXPECT_EQ(codes[1], codes[2]);
}

TEST(Developed, SamplesThatAreNoNumbersBecomeBlack) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(shown({nan, 1.0, 1.0}, {.metered = lux(1.0)}), (std::array{0, 0, 0}));
  EXPECT_EQ(shown({-1.0, -1.0, -1.0}, {.metered = lux(1.0)}), (std::array{0, 0, 0}));
}

TEST(Developed, RowsAndColumnsStayWhereTheyWere) {
  const std::array<Rgb, 6> scene{grey(0.0), grey(1e9), grey(0.0), grey(0.0), grey(0.0), Rgb(1e9, 0.0, 0.0)};
  const Picture picture = developed(scene, 3, 2, {.metered = lux(100.0), .curve = ToneCurve::plain});
  EXPECT_EQ(picture.samples[picture.first_sample(1, 0) + 2], 255);
  EXPECT_EQ(picture.samples[picture.first_sample(2, 1)], 255);
  EXPECT_EQ(picture.samples[picture.first_sample(2, 1) + 1], 0);
  EXPECT_EQ(picture.samples[picture.first_sample(0, 1)], 0);
}

}  // namespace
}  // namespace fillside
