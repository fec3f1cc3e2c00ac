#include "libsim/base/estimate.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "tests/base/dice.h"

namespace fillside {
namespace {

constexpr std::array kFour{2.0, 4.0, 4.0, 6.0};

TEST(Estimate, has_the_mean_and_standard_error_of_its_replicates) {
  const Estimate figure(kFour);
  EXPECT_DOUBLE_EQ(figure.value(), 4.0);
  // s^2 = (4 + 0 + 0 + 4) / 3, standard error s / 2, by hand.
  EXPECT_DOUBLE_EQ(figure.standard_error(), std::sqrt(8.0 / 3.0) / 2.0);
  EXPECT_DOUBLE_EQ(figure.half_width_95(), 3.182 * std::sqrt(8.0 / 3.0) / 2.0);
}

TEST(Estimate, of_an_exact_number_has_no_error) {
  EXPECT_EQ(Estimate(3.5).value(), 3.5);
  EXPECT_EQ(Estimate(3.5).standard_error(), 0.0);
  EXPECT_EQ(Estimate(3.5).half_width_95(), 0.0);
}

TEST(Estimate, arithmetic_goes_replicate_by_replicate) {
  const Estimate a(kFour), b(std::array{1.0, 2.0, 2.0, 3.0});
  EXPECT_DOUBLE_EQ((a + b).value(), 6.0);
  EXPECT_DOUBLE_EQ((a - b).replicate(3), 3.0);
  EXPECT_DOUBLE_EQ((a * b).replicate(1), 8.0);
  // a is exactly twice b, luck included: their ratio is known exactly.
  EXPECT_DOUBLE_EQ((a / b).value(), 2.0);
  EXPECT_EQ((a / b).standard_error(), 0.0);
  EXPECT_EQ((a - a).half_width_95(), 0.0);
}

TEST(Estimate, an_exact_number_joins_any_count_of_replicates) {
  const Estimate doubled = 2.0 * Estimate(kFour);
  EXPECT_EQ(doubled.replicate_count(), 4);
  EXPECT_DOUBLE_EQ(doubled.value(), 8.0);
  EXPECT_DOUBLE_EQ(doubled.standard_error(), 2.0 * Estimate(kFour).standard_error());
}

TEST(Estimate, in_stops_is_the_binary_logarithm_of_value_and_replicates) {
  const Estimate stops = in_stops(Estimate(kFour));
  EXPECT_DOUBLE_EQ(stops.value(), 2.0);
  EXPECT_DOUBLE_EQ(stops.replicate(0), 1.0);
}

// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 26.10, A = 0.95.
TEST(StudentT, agrees_with_the_printed_table) {
  struct Row {
    int degrees_of_freedom;
    double t;
  };
  for (const Row row : {Row{1, 12.706}, Row{2, 4.303}, Row{3, 3.182}, Row{4, 2.776}, Row{5, 2.571},
                        Row{7, 2.365}, Row{10, 2.228}, Row{15, 2.131}, Row{16, 2.120}, Row{17, 2.110},
                        Row{20, 2.086}, Row{30, 2.042}, Row{60, 2.000}, Row{120, 1.980}})
    EXPECT_NEAR(student_t_95(row.degrees_of_freedom), row.t, 5.1e-4) << row.degrees_of_freedom;
}

/// Share of many repetitions in which the 95 % interval holds the truth.
double coverage(int replicates, double truth,
                const std::function<Estimate(tests::Dice&, std::size_t)>& measure) {
  tests::Dice dice(7);
  constexpr int kTrials = 4000;
  int held = 0;
  for (int trial = 0; trial < kTrials; ++trial) {
    const Estimate figure = measure(dice, static_cast<std::size_t>(replicates));
    held += std::abs(figure.value() - truth) <= figure.half_width_95();
  }
  return static_cast<double>(held) / kTrials;
}

std::vector<double> readings(tests::Dice& dice, std::size_t count, double mean, double spread) {
  std::vector<double> values(count);
  for (double& value : values) value = mean + spread * dice.throw_normal();
  return values;
}

// The share itself scatters by sqrt(.95 x .05 / 4000) = 0.0034; four of those are allowed.
TEST(Estimate, the_95_percent_interval_holds_the_truth_95_times_in_100) {
  const auto plain = [](tests::Dice& dice, std::size_t n) {
    return Estimate(readings(dice, n, 800.0, 90.0));
  };
  for (const int replicates : {2, 4, 8, 16})
    EXPECT_NEAR(coverage(replicates, 800.0, plain), 0.95, 0.014) << replicates;
}

TEST(Estimate, a_ratio_in_stops_of_readings_that_share_their_luck_is_covered_too) {
  const auto ratio = [](tests::Dice& dice, std::size_t n) {
    const auto shared = readings(dice, n, 0.0, 30.0), own = readings(dice, n, 0.0, 10.0);
    std::vector<double> lit(n), shadow(n);
    for (std::size_t i = 0; i < n; ++i)
      lit[i] = 1200.0 + 2.0 * shared[i], shadow[i] = 300.0 + 0.5 * shared[i] + own[i];
    return in_stops(Estimate(lit) / Estimate(shadow));
  };
  EXPECT_NEAR(coverage(16, 2.0, ratio), 0.95, 0.014);
}

}  // namespace
}  // namespace fillside
