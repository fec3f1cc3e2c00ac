#include "libsim/view/map.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "libsim/view/averaged.h"
#include "libsim/view/levels.h"
#include "libsim/view/map_value.h"
#include "libsim/view/round_numbers.h"
#include "tests/view/map_of.h"

namespace fillside {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

TEST(GoodRange, StopsAreRoundedOutwardsToThirds) {
  Map map =
      map_of(200, 100, [](double x, double) { return 0.05 * x; });  // -1 to 1; 1st to 99th: about +-0.98
  map.in_stops = true;
  const Range range = good_range(map);
  EXPECT_NEAR(range.low, -1.0, 1e-12);
  EXPECT_NEAR(range.high, 1.0, 1e-12);
}

TEST(GoodRange, NoiseIsNotStretchedOverTheWholeScale) {
  Map map = map_of(20, 10, [](double x, double y) { return 0.5 + 0.02 * std::sin(17.0 * x + 5.0 * y); });
  map.in_stops = true;
  const Range range = good_range(map);
  EXPECT_NEAR(range.high - range.low, 1.0, 1e-12);
  EXPECT_LT(range.low, 0.48);
  EXPECT_GT(range.high, 0.52);
}

TEST(GoodRange, AFewOddCellsDoNotMoveIt) {
  Map map = map_of(40, 20, [](double x, double) { return 0.05 * x; });
  map.in_stops = true;
  const Range before = good_range(map);
  map.values[17] = 900.0F, map.values[300] = -50.0F, map.values[301] = static_cast<float>(kNan);
  const Range after = good_range(map);
  EXPECT_EQ(before.low, after.low);
  EXPECT_EQ(before.high, after.high);
}

TEST(GoodRange, LuxGoFromOneTwoFiveNumberToOneTwoFiveNumber) {
  Map map =
      map_of(100, 10, [](double x, double) { return 1200.0 * std::pow(10.0, x / 20.0); });  // 120 to 12000
  map.unit = "lx";
  const Range range = good_range(map);
  EXPECT_NEAR(range.low, 100.0, 1e-9);
  EXPECT_NEAR(range.high, 20000.0, 1e-9);
  EXPECT_TRUE(is_logarithmic("lx", range));
}

TEST(GoodRange, OtherNumbersGetEvenSteps) {
  const Map map = map_of(100, 10, [](double x, double) { return 0.5 + x / 45.0; });  // 0.06 to 0.94
  const Range range = good_range(map);
  EXPECT_NEAR(range.low, 0.0, 1e-12);
  EXPECT_NEAR(range.high, 1.0, 1e-12);
}

TEST(GoodRange, AConstantOrCoveredMapStillHasAnExtent) {
  for (const double value : {0.0, 7.0, -3.0, kNan}) {
    const Range range = good_range(map_of(4, 4, [&](double, double) { return value; }));
    EXPECT_GT(range.high, range.low) << value;
    EXPECT_TRUE(std::isnan(value) || (range.low <= value && value <= range.high)) << value;
  }
}

TEST(GoodRange, TheCentredOneReachesAsFarBelowZeroAsAbove) {
  Map map = map_of(200, 100, [](double x, double) { return 0.02 * x + 0.2; });  // -0.2 to 0.6
  map.in_stops = true;
  const Range range = good_centred_range(map);
  EXPECT_EQ(range.low, -range.high);
  EXPECT_NEAR(range.high, 2.0 / 3.0, 1e-12);
}

TEST(Averaged, RubsOutTheGrainAsAGaussianDoes) {
  std::mt19937 numbers(7);
  std::normal_distribution<double> grain(0.0, 0.3);
  const Map map = map_of(200, 200, [&](double, double) { return grain(numbers); });
  const auto spread = [](const Map& any) {
    double sum = 0.0;
    for (const float value : any.values) sum += value * value;
    return std::sqrt(sum / static_cast<double>(any.values.size()));
  };
  // White noise under 1-2-1 in both directions twice: sum of squares of (1 4 6 4 1) / 16 is 70 / 256 each
  // way.
  EXPECT_NEAR(spread(averaged(map, 2)) / spread(map), 70.0 / 256.0, 0.02);
}

TEST(Averaged, LeavesRampsAndCoveredCellsAsTheyAre) {
  const Map map =
      map_of(20, 10, [](double x, double y) { return std::hypot(x, y) < 5.0 ? kNan : 0.1 * x - 0.3 * y; });
  const Map out = averaged(map, 3);
  for (std::size_t i = 0; i < map.values.size(); ++i) {
    EXPECT_EQ(std::isnan(out.values[i]), std::isnan(map.values[i]));
    EXPECT_TRUE(std::isnan(map.values[i]) || std::abs(out.values[i] - map.values[i]) < 1e-5F) << i;
  }
}

TEST(Levels, StopsAreThirdsWithWholeOnesHeavy) {
  Map map;
  map.in_stops = true, map.low = -4.0 / 3.0, map.high = 1.0;
  const std::vector<Level> levels = levels_of(map);
  ASSERT_EQ(levels.size(), 8u);
  const std::vector<std::string> texts{"−1⅓", "−1", "−⅔", "−⅓", "0", "+⅓", "+⅔", "+1"};
  for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(levels[i].text, texts[i]);
  EXPECT_TRUE(levels[1].heavy && levels[4].heavy && levels[7].heavy);
  EXPECT_FALSE(levels[0].heavy || levels[2].heavy || levels[5].heavy);
}

TEST(Levels, LuxAreOneTwoFiveNumbersWithLighterOnesBetween) {
  Map map;
  map.unit = "lx", map.low = 200.0, map.high = 2000.0;
  std::string heavy, thin;
  for (const Level& level : levels_of(map)) (level.heavy ? heavy : thin) += level.text + " ";
  EXPECT_EQ(heavy, "200 500 1000 2000 ");
  EXPECT_EQ(thin, "300 700 1500 ");
}

TEST(Levels, EvenStepsKeepTheDigitsTheirStepNeeds) {
  Map map;
  map.low = 0.0, map.high = 1.0;
  const std::vector<Level> levels = levels_of(map);
  ASSERT_EQ(levels.size(), 11u);
  EXPECT_EQ(levels[3].text, "0.3");
  EXPECT_EQ(number_text(-0.25, 0.05), "−0.25");
  EXPECT_EQ(number_text(-0.001, 0.05), "0.00");
}

TEST(Levels, PositionIsLogarithmicForLuxAndLinearForStops) {
  Map lux_map;
  lux_map.unit = "lx", lux_map.low = 100.0, lux_map.high = 10000.0;
  EXPECT_NEAR(position_on_scale(lux_map, 1000.0), 0.5, 1e-12);
  Map stops_map;
  stops_map.in_stops = true, stops_map.low = -2.0, stops_map.high = 2.0;
  EXPECT_NEAR(position_on_scale(stops_map, 1.0), 0.75, 1e-12);
}

TEST(RoundNumbers, OneTwoFiveBracketsAValue) {
  EXPECT_NEAR(one_two_five_below(4.9), 2.0, 1e-12);
  EXPECT_NEAR(one_two_five_above(4.9), 5.0, 1e-12);
  EXPECT_NEAR(one_two_five_above(5.1), 10.0, 1e-12);
  EXPECT_NEAR(one_two_five_below(0.02), 0.02, 1e-12);
  EXPECT_NEAR(one_two_five_above(0.02), 0.02, 1e-12);
  EXPECT_NEAR(one_two_five_below(1000.0), 1000.0, 1e-9);
}

TEST(MapValue, ARampIsReadExactlyEverywhereUpToTheEdges) {
  const Map map = map_of(8, 4, [](double x, double y) { return 2.0 * x - 3.0 * y; });
  for (const double x : {-20.0, -19.0, -3.3, 0.0, 12.1, 20.0})
    for (const double y : {-10.0, -9.9, 1.7, 10.0})
      EXPECT_NEAR(*value_at(map, x, y), 2.0 * x - 3.0 * y, 1e-4);
}

TEST(MapValue, CoveredPlacesHaveNoValueAndOthersKeepTheirs) {
  const Map map = map_of(40, 20, [](double x, double) { return x < 0.0 ? kNan : 5.0; });
  EXPECT_FALSE(value_at(map, -1.0, 0.0));
  EXPECT_FALSE(value_at(map, -20.0, 10.0));
  EXPECT_NEAR(*value_at(map, 0.2, 0.0), 5.0, 1e-6);
  EXPECT_TRUE(any_covered(map));
  EXPECT_FALSE(all_covered(map));
}

}  // namespace
}  // namespace fillside
