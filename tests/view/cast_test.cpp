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

TEST(Cast, over_several_places_is_that_of_their_light_together_and_how_far_each_strays) {
  const TwoLamps set;
  const std::array<Rgb, 3> lights{Rgb(130.0, 100.0, 50.0), Rgb(40.0, 50.0, 70.0), Rgb(80.0, 100.0, 80.0)};
  Measurement m(set.scene, "made up", 3, 1, 2);
  std::vector<Rgb> rows(m.source_count() * m.via_count(), grey(0.0)), unshadowed(m.source_count(), grey(0.0));
  for (std::size_t cell = 0; cell < 3; ++cell) {
    rows[kStraight] = grey(200.0);
    rows[set.via("card")] = lights[cell];
    for (int r = 0; r < 2; ++r) m.set(cell, r, rows, unshadowed);
  }
  const std::vector<std::size_t> first_two{0, 1}, all_three{0, 1, 2};
  const auto mired = [&](const Rgb& light) { return cast_of(channels(light), grey(1.0))->mired.value(); };
  const CastSpread spread = cast_spread(m, grey(1.0), first_two).value();
  EXPECT_NEAR(spread.together.mired.value(), mired(grey(400.0) + lights[0] + lights[1]), 1e-3);
  EXPECT_NEAR(spread.warmest_mired, mired(grey(200.0) + lights[0]), 1e-3);
  EXPECT_NEAR(spread.coolest_mired, mired(grey(200.0) + lights[1]), 1e-3);
  EXPECT_GT(spread.warmest_mired, 5.0);
  EXPECT_LT(spread.coolest_mired, -5.0);
  // The green third place is in the causes only when it is asked for.
  EXPECT_GT(cast_spread(m, grey(1.0), all_three)->most_green_duv, spread.most_green_duv);
  const auto causes = cast_causes(m, grey(1.0), first_two);
  ASSERT_EQ(causes.size(), 1u);
  EXPECT_NEAR(causes[0].cast.mired.value(), spread.together.mired.value(), 1e-3);
}

}  // namespace
}  // namespace fillside
