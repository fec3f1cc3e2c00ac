#include "libsim/what_if/optimum_search.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace fillside {
namespace {

// Branin's function has three minima of 0.397887 (Dixon and Szego, Towards Global Optimisation 2, 1978).
TEST(OptimumSearch, finds_the_deepest_of_branins_valleys) {
  const auto branin = [](const Shares& at) {
    constexpr double kPi = std::numbers::pi;
    const double x = -5.0 + 15.0 * at[0], y = 15.0 * at[1];
    const double bend = y - 5.1 / (4.0 * kPi * kPi) * x * x + 5.0 / kPi * x - 6.0;
    return -(bend * bend + 10.0 * (1.0 - 1.0 / (8.0 * kPi)) * std::cos(x) + 10.0);
  };
  EXPECT_NEAR(find_largest(2, branin, {.look_round = 60, .climb = 60}).value, -0.397887, 1e-3);
}

TEST(OptimumSearch, finds_a_narrow_top_along_one_share) {
  const auto tent = [](const Shares& at) { return -std::abs(at[0] - 0.7123); };
  const LargestFound found = find_largest(1, tent, {.look_round = 20, .climb = 30});
  EXPECT_NEAR(found.at[0], 0.7123, 2e-3);
}

TEST(OptimumSearch, stops_when_it_is_enough) {
  int tried = 0;
  const auto slope = [&](const Shares& at) { return ++tried, at[0]; };
  EXPECT_GE(find_largest(1, slope, {.look_round = 500, .climb = 500, .enough = 0.8}).value, 0.8);
  EXPECT_LT(tried, 20);
}

TEST(OptimumSearch, hands_on_what_the_function_throws) {
  const auto fails = [](const Shares&) -> double { throw std::runtime_error("no set"); };
  EXPECT_THROW(find_largest(1, fails, {}), std::runtime_error);
}

}  // namespace
}  // namespace fillside
