// The checks that a person may run against the books, themselves checked: they hold, and each can fail.
#include "libsim/what_if/light_checks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace fillside {
namespace {

const std::vector<LightCheck>& checks() {
  static const std::vector<LightCheck> once = light_checks();
  return once;
}

TEST(LightChecks, all_hold) {
  EXPECT_GE(checks().size(), 20u);
  for (const LightCheck& check : checks())
    EXPECT_TRUE(holds(check)) << check.what << ": expected " << check.expected << ", computed "
                              << check.computed.value() << " ± " << check.computed.half_width_95();
}

TEST(LightChecks, hold_with_another_seed_drawn_afresh) {
  const auto others = light_checks({.seed = 2});
  ASSERT_EQ(others.size(), checks().size());
  int moved = 0;
  for (std::size_t i = 0; i < others.size(); ++i) {
    EXPECT_TRUE(holds(others[i])) << others[i].what;
    moved += others[i].computed.value() != checks()[i].computed.value();
  }
  EXPECT_GE(moved, 15) << "the sampled ones";
}

// A wrong expectation, planted: 5 % off, or half a degree of the sun's place.
TEST(LightChecks, each_fails_when_the_published_value_is_another) {
  for (const LightCheck& check : checks())
    for (const double side : {-1.0, 1.0}) {
      LightCheck planted = check;
      planted.expected *= 1.0 + 0.05 * side;
      EXPECT_FALSE(holds(planted)) << check.what;
      if (check.unit != "°") continue;
      planted.expected = check.expected + 0.5 * side;
      EXPECT_FALSE(holds(planted)) << check.what;
    }
}

TEST(LightChecks, fail_when_nothing_was_computed_or_the_error_bar_is_too_long_to_tell) {
  LightCheck check = checks().front();
  check.computed = Estimate(std::nan(""));
  EXPECT_FALSE(holds(check));
  const std::array<double, 4> wide{0.9 * check.expected, 1.1 * check.expected, 0.9 * check.expected,
                                   1.1 * check.expected};
  check.computed = Estimate(wide);
  EXPECT_FALSE(holds(check));
}

TEST(LightChecks, name_their_sources_and_differ) {
  std::set<std::string> names;
  for (const LightCheck& check : checks()) {
    EXPECT_GT(check.source.size(), 10u) << check.what;
    EXPECT_EQ(check.tolerance > 0.0, !check.because.empty()) << check.what;
    EXPECT_TRUE(names.insert(check.what).second) << check.what;
  }
}

}  // namespace
}  // namespace fillside
