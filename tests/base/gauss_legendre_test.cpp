#include "libsim/base/gauss_legendre.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 5.
TEST(GaussLegendre, points_and_weights_are_as_tabulated) {
  const auto rule = gauss_legendre<5>();
  EXPECT_NEAR(rule[0].at, 0.906179845938664, 1e-15);
  EXPECT_NEAR(rule[0].weight, 0.236926885056189, 1e-15);
  EXPECT_NEAR(rule[1].at, 0.538469310105683, 1e-15);
  EXPECT_NEAR(rule[1].weight, 0.478628670499366, 1e-15);
  EXPECT_NEAR(rule[2].at, 0.0, 1e-15);
  EXPECT_NEAR(rule[2].weight, 0.568888888888889, 1e-15);
}

TEST(GaussLegendre, is_exact_up_to_twice_its_points_less_one_and_no_further) {
  const auto rule = gauss_legendre<6>();
  const auto error_at = [&](int power) {
    return integrated(rule, 0.0, 2.0, [&](double x) { return std::pow(x, power); }) -
           std::pow(2.0, power + 1) / (power + 1);
  };
  for (int power = 0; power <= 11; ++power) EXPECT_NEAR(error_at(power), 0.0, 1e-11) << power;
  EXPECT_GT(std::abs(error_at(12)), 1e-7);
}

TEST(GaussLegendre, of_many_points_still_converges_to_all_digits) {
  EXPECT_NEAR(integrated(gauss_legendre<32>(), 0.0, 1.0, [](double x) { return std::exp(x); }),
              std::exp(1.0) - 1.0, 1e-14);
}

}  // namespace
}  // namespace fillside
