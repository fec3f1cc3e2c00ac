#include "libsim/view/cast.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/chromaticity.h"
#include "tests/view/measured.h"

namespace fillside {
namespace {

std::array<Estimate, 3> channels(const Rgb& rgb) {
  const auto one = [&](int i) { return Estimate(std::array{rgb[i], rgb[i]}); };
  return {one(0), one(1), one(2)};
}

// Arithmetic: 1e6 / T. From 5500 to 6500 K are -28 mired; McCamy's formula is within 0.4 % there.
TEST(Cast, is_the_difference_of_the_reciprocal_temperatures) {
  const Rgb white = *light_of_temperature(5500.0);
  EXPECT_NEAR(cast_of(channels(*light_of_temperature(6500.0)), white)->mired.value(), -27.97, 0.5);
  EXPECT_NEAR(cast_of(channels(*light_of_temperature(3200.0)), white)->mired.value(), 130.68, 1.5);
  const Cast none = cast_of(channels(2.5 * white), white).value();
  EXPECT_NEAR(none.mired.value(), 0.0, 1e-9);
  EXPECT_NEAR(none.duv.value(), 0.0, 1e-9);
  EXPECT_FALSE(cast_of(channels({0, 0, 1}), white));
}

TEST(Cast, off_a_green_wall_is_green_and_off_a_red_one_warm) {
  EXPECT_GT(cast_of(channels({0.9, 1.1, 0.9}), grey(1.0))->duv.value(), 0.005);
  EXPECT_LT(cast_of(channels({1.05, 0.95, 1.05}), grey(1.0))->duv.value(), -0.003);
  EXPECT_GT(cast_of(channels({1.2, 1.0, 0.8}), grey(1.0))->mired.value(), 20.0);
}

TEST(Cast, has_words) {
  EXPECT_EQ(to_text(Cast{12.3, 0.0041}), "12 mired warm, 0.004 green");
  EXPECT_EQ(to_text(Cast{-7.0, 0.0}), "7 mired cool");
  EXPECT_EQ(to_text(Cast{0.2, -0.002}), "0.002 magenta");
  EXPECT_EQ(to_text(Cast{0.2, 0.0001}), "neutral");
}

/// White light straight and by the cloth, and by the card what `card` says, in two replicates alike.
Measurement by_the_card(const TwoLamps& set, const Rgb& card) {
  Measurement m(set.scene, "made up", 1, 1, 2);
  std::vector<Rgb> rows(m.source_count() * m.via_count(), grey(0.0)), unshadowed(m.source_count(), grey(0.0));
  rows[kStraight] = grey(300.0);
  rows[set.via("cloth")] = grey(50.0);
  rows[set.via("card")] = card;
  for (int r = 0; r < 2; ++r) m.set(0, r, rows, unshadowed);
  return m;
}

TEST(Cast, is_put_down_to_what_turned_the_light) {
  const TwoLamps set;
  const Rgb orange(130.0, 100.0, 50.0);
  const auto causes = cast_causes(by_the_card(set, orange), grey(1.0));
  ASSERT_GE(causes.size(), 1u);
  EXPECT_EQ(causes[0].via, "card");
  // Without the card's rows the light is white, so that all of the cast is the card's.
  const auto all = cast_of(channels(grey(350.0) + orange), grey(1.0));
  EXPECT_NEAR(causes[0].cast.mired.value(), all->mired.value(), 1e-3);
  EXPECT_GT(causes[0].cast.mired.value(), 5.0);
  EXPECT_TRUE(cast_causes(by_the_card(set, grey(80.0)), grey(1.0)).empty());
}

}  // namespace
}  // namespace fillside
