#include "libsim/view/colour_scale.h"

#include <gtest/gtest.h>

#include <Eigen/Core>
#include <algorithm>
#include <vector>

namespace fillside {
namespace {

// Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
// IEEE TVCG 15(6), 2009, the matrices for severity 1.0, on linear RGB.
Eigen::Matrix3d protanopia() {
  return (Eigen::Matrix3d() << 0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882,
          -0.048116, 1.051998)
      .finished();
}
Eigen::Matrix3d deuteranopia() {
  return (Eigen::Matrix3d() << 0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820,
          0.042940, 0.968881)
      .finished();
}
Eigen::Matrix3d tritanopia() {
  return (Eigen::Matrix3d() << 1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733,
          0.691367, 0.303900)
      .finished();
}

Oklab seen_with(const Eigen::Matrix3d& eyes, const Rgb& linear) {
  return oklab_of(Rgb((eyes * linear.matrix()).array()).max(0.0).min(1.0));
}

// The smallest distance between any two of the colours, as those eyes see them.
double least_distance(const Eigen::Matrix3d& eyes, const std::vector<Rgb>& colours) {
  double least = 1e9;
  for (std::size_t i = 0; i < colours.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      least = std::min(least, distance_between(seen_with(eyes, colours[i]), seen_with(eyes, colours[j])));
  return least;
}

std::vector<Rgb> steps_of(ColourScale scale, int count) {
  std::vector<Rgb> colours;
  for (int i = 0; i < count; ++i) colours.push_back(colour_on_scale(scale, i / (count - 1.0)));
  return colours;
}

constexpr double kClearlyDifferent = 0.04;  // about twice what is just seen side by side

TEST(ColourScale, SequentialRisesInLightnessByEqualSteps) {
  const std::vector<Rgb> colours = steps_of(ColourScale::sequential, 65);
  for (std::size_t i = 1; i < colours.size(); ++i)
    EXPECT_NEAR(oklab_of(colours[i]).lightness - oklab_of(colours[i - 1]).lightness, 0.71 / 64.0, 1e-4) << i;
}

TEST(ColourScale, SequentialRisesInLuminanceSoThatItReadsInGreyscale) {
  const std::vector<Rgb> colours = steps_of(ColourScale::sequential, 256);
  for (std::size_t i = 1; i < colours.size(); ++i)
    EXPECT_GT(luminance(colours[i]), luminance(colours[i - 1])) << i;
}

TEST(ColourScale, StepsAreUniformWithinFivePerCent) {
  for (const ColourScale scale : {ColourScale::sequential, ColourScale::diverging}) {
    const std::vector<Rgb> colours = steps_of(scale, 33);
    double least = 1e9, most = 0.0;
    for (std::size_t i = 1; i < colours.size(); ++i) {
      const double step = distance_between(oklab_of(colours[i]), oklab_of(colours[i - 1]));
      least = std::min(least, step), most = std::max(most, step);
    }
    EXPECT_LT(most / least, 1.05) << static_cast<int>(scale);
  }
}

TEST(ColourScale, EveryColourCanBeShownWithoutClipping) {
  for (const ColourScale scale : {ColourScale::sequential, ColourScale::diverging})
    for (int i = 0; i <= 200; ++i) {
      const Rgb linear = linear_of(point_on_scale(scale, i / 200.0));
      EXPECT_GE(linear.minCoeff(), 0.0) << i;
      EXPECT_LE(linear.maxCoeff(), 1.0) << i;
    }
}

TEST(ColourScale, FourStopsInThirdsStayDistinctForColourBlindReaders) {
  const std::vector<Rgb> colours = steps_of(ColourScale::sequential, 13);
  EXPECT_GT(least_distance(protanopia(), colours), kClearlyDifferent);
  EXPECT_GT(least_distance(deuteranopia(), colours), kClearlyDifferent);
  EXPECT_GT(least_distance(tritanopia(), colours), kClearlyDifferent);
}

TEST(ColourScale, DivergingStepsStayDistinctForColourBlindReaders) {
  const std::vector<Rgb> colours = steps_of(ColourScale::diverging, 9);
  EXPECT_GT(least_distance(protanopia(), colours), kClearlyDifferent);
  EXPECT_GT(least_distance(deuteranopia(), colours), kClearlyDifferent);
}

TEST(ColourScale, TheColourBlindCheckRefusesARedAndGreenOfOneLightness) {
  const std::vector<Rgb> colours{linear_of({0.6, 0.10, 0.03}), linear_of({0.6, -0.08, 0.05})};
  EXPECT_GT(least_distance(Eigen::Matrix3d::Identity(), colours), 0.15);
  EXPECT_LT(least_distance(deuteranopia(), colours), kClearlyDifferent);
}

TEST(ColourScale, DivergingArmsDarkenAlikeFromALightMiddle) {
  const double middle = point_on_scale(ColourScale::diverging, 0.5).lightness;
  EXPECT_GT(middle, 0.9);
  for (const double out : {0.1, 0.3, 0.5}) {
    const double less = point_on_scale(ColourScale::diverging, 0.5 - out).lightness;
    EXPECT_NEAR(less, point_on_scale(ColourScale::diverging, 0.5 + out).lightness, 1e-12);
    EXPECT_LT(less, middle - out);
  }
}

TEST(Oklab, WhiteIsLightnessOneWithoutHue) {
  const Oklab white = oklab_of(grey(1.0));
  EXPECT_NEAR(white.lightness, 1.0, 1e-6);
  EXPECT_NEAR(white.a, 0.0, 1e-6);
  EXPECT_NEAR(white.b, 0.0, 1e-6);
}

TEST(Oklab, RedIsWhereCssColourSaysItIs) {
  // W3C, "CSS Color Module Level 4", 2022: the sRGB red is oklab(62.796% 0.22486 0.12585).
  const Oklab red = oklab_of({1.0, 0.0, 0.0});
  EXPECT_NEAR(red.lightness, 0.62796, 1e-4);
  EXPECT_NEAR(red.a, 0.22486, 1e-4);
  EXPECT_NEAR(red.b, 0.12585, 1e-4);
}

TEST(Oklab, ThereAndBackGivesTheSameColour) {
  const Rgb colour(0.7, 0.2, 0.05);
  EXPECT_TRUE(linear_of(oklab_of(colour)).isApprox(colour, 1e-6));
}

}  // namespace
}  // namespace fillside
