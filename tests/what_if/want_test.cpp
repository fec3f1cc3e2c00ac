#include "libsim/what_if/want.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace fillside {
namespace {

Want want(std::string_view text) {
  const auto parsed = parse_want(text);
  if (const auto* fault = std::get_if<WantFault>(&parsed)) ADD_FAILURE() << text << ": " << fault->what;
  return std::holds_alternative<Want>(parsed) ? std::get<Want>(parsed) : Want{};
}

TEST(Want, reads_ratios_fractions_bounds_and_tolerances) {
  EXPECT_EQ(want("lit:shadow = 3:1").figure, "subject.lit_to_shadow");
  EXPECT_EQ(*want("lit:shadow = 3:1").exact, 3.0);
  EXPECT_EQ(want("lit:shadow = 3:1").tolerance_stops, 0.1);
  EXPECT_EQ(want("lit:shadow = 3:1 within 0.25 stop").tolerance_stops, 0.25);
  EXPECT_EQ(want("lit:shadow=3:1 +- 1/4 stops").tolerance_stops, 0.25);
  EXPECT_DOUBLE_EQ(*want("plane.table.evenness <= 1/3 stop").most, 1.0 / 3.0);
  EXPECT_EQ(*want("board.fill.gain.food shadow at least 1").least, 1.0);
  EXPECT_EQ(want("board.fill.gain.food shadow at least 1").figure, "board.fill.gain.food shadow");
  EXPECT_EQ(want("key:fill >= 4").figure, "meter.dish up.key_to_fill");
  EXPECT_EQ(*want("meter.dish up.lx >= 400 lx").least, 400.0);
}

TEST(Want, refuses_what_is_no_wish_with_a_way_to_write_it) {
  for (const char* text : {"", "lit:shadow", "= 3", "lit:shadow = ", "lit:shadow = much", "lit:shadow = 3:0",
                           "lit:shadow = 3:1 within 0 stop", "lit:shadow >= 3 within 0.1 stop",
                           "lit:shadow = 1e999", "lit:shadow = nan", "lit:shadow ~ 3"}) {
    const auto parsed = parse_want(text);
    ASSERT_TRUE(std::holds_alternative<WantFault>(parsed)) << text;
    EXPECT_FALSE(std::get<WantFault>(parsed).what.empty());
    EXPECT_FALSE(std::get<WantFault>(parsed).remedy.empty());
  }
}

// Stops are log2 of a ratio, by definition.
TEST(Want, counts_slack_in_stops_from_the_nearer_bound) {
  EXPECT_DOUBLE_EQ(slack_stops(want("lit:shadow >= 2:1"), 8.0, "ratio").value(), 2.0);
  EXPECT_DOUBLE_EQ(slack_stops(want("lit:shadow <= 2:1"), 8.0, "ratio").value(), -2.0);
  EXPECT_DOUBLE_EQ(slack_stops(want("lit:shadow = 4:1 within 0.5 stop"), 8.0, "ratio").value(), -0.5);
  EXPECT_DOUBLE_EQ(slack_stops(want("lit:shadow = 4:1 within 0.5 stop"), 4.0, "ratio").value(), 0.5);
  EXPECT_DOUBLE_EQ(slack_stops(want("subject.stops <= 2"), 1.5, "stops").value(), 0.5);
  EXPECT_DOUBLE_EQ(slack_stops(want("meter.dish up.ev100 >= 8"), 9.0, "EV").value(), 1.0);
}

// Shares may be nothing at all, which has no logarithm: ten points count for a stop.
TEST(Want, counts_shares_by_points) {
  EXPECT_EQ(want("sun on the dish <= 0 %").figure, "dish.sunlit");
  EXPECT_EQ(want("falloff <= 1/3 stop").figure, "dish.falloff");
  EXPECT_DOUBLE_EQ(slack_stops(want("sun on the dish <= 0 %"), 0.0, "%").value(), 0.0);
  EXPECT_DOUBLE_EQ(slack_stops(want("sun on the dish <= 5 %"), 25.0, "%").value(), -2.0);
  EXPECT_DOUBLE_EQ(slack_stops(want("glare.soup.share >= 5 %"), 25.0, "%").value(), 2.0);
}

TEST(Want, carries_the_figures_error_bar_into_the_slack) {
  const std::array<double, 4> replicates{3.8, 4.0, 4.2, 4.0};
  const Estimate figure{replicates};
  const double expected = figure.standard_error() / figure.value() / std::log(2.0);
  EXPECT_NEAR(slack_stops(want("lit:shadow >= 2:1"), figure, "ratio").standard_error(), expected,
              0.01 * expected);
}

}  // namespace
}  // namespace fillside
