// fillside rules: verdicts that follow from the figures, and figures that follow from handbook formulas.
#include <gmock/gmock.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "tests/closed_form/configuration_factors.h"
#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using Words = std::vector<std::string>;

class RulesVerb : public ProgramTest {
 protected:
  json rule(int number, const std::string& precision = "0.02 stop") const {
    const Outcome outcome =
        run({"rules", "--rule", std::to_string(number), "--json", "--precision", precision});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out).at("rules").at(0);
  }
  static double value(const json& trial) { return trial.at("value").at("value").get<double>(); }
  static double error(const json& trial) { return trial.at("value").at("standard_error").get<double>(); }
};

/// A square window of 1.2 m seen square on from its middle line: four corners of Howell's parallel rectangle.
double square_on(double distance_m) { return 4.0 * tests::parallel_corner(0.6, 0.6, distance_m); }

TEST_F(RulesVerb, twice_as_far_costs_what_lamberts_formula_says) {
  const json trials = rule(1).at("trials");
  ASSERT_EQ(trials.size(), 5u);
  double near_m = 0.4;
  for (const json& trial : trials) {
    const double known = std::log2(square_on(near_m) / square_on(2.0 * near_m));
    EXPECT_NEAR(value(trial), known, 4.0 * error(trial)) << trial.at("where");
    EXPECT_EQ(trial.at("met").get<bool>(), std::abs(known - 2.0) <= 1.0 / 3.0) << trial.at("where");
    near_m *= 2.0;
  }
  EXPECT_EQ(rule(1).at("verdict"), "holds when");
}

TEST_F(RulesVerb, a_window_is_a_point_as_far_as_the_formula_says) {
  const json trials = rule(3).at("trials");
  for (const auto& [index, distance_m] : {std::pair{0, 6.0}, {1, 12.0}}) {
    const double known = std::log2(square_on(distance_m) * kPi / (1.44 / (distance_m * distance_m)));
    EXPECT_NEAR(value(trials.at(static_cast<std::size_t>(index))), known,
                4.0 * error(trials.at(static_cast<std::size_t>(index))));
  }
}

// The sun is 31' 59" across at the mean distance (959.63", Astronomical Almanac): 9.30 mm a metre.
TEST_F(RulesVerb, the_suns_edge_is_nine_millimetres_a_metre) {
  const json shadow = rule(8);
  EXPECT_NEAR(1e3 / value(shadow.at("trials").at(0)), 9.305, 0.005);
  EXPECT_EQ(shadow.at("verdict"), "holds");
}

TEST_F(RulesVerb, arithmetic_decides_what_is_arithmetic) {
  EXPECT_NEAR(value(rule(10).at("trials").at(0)), 29.29, 0.01);  // 1 - 1 / sqrt 2
  EXPECT_EQ(rule(10).at("verdict"), "does not hold");
  EXPECT_NEAR(value(rule(23).at("trials").at(0)), 1.585, 0.001);  // log2 3
  EXPECT_NEAR(value(rule(23).at("trials").at(1)), 2.322, 0.001);  // log2 5
  EXPECT_EQ(rule(24).at("verdict"), "holds");
}

// Howell's rectangle parallel to a small plane, four corners of 30 x 30 cm at 60 cm: 0.2394 of the card's
// light.
TEST_F(RulesVerb, a_card_in_open_sun_by_howells_formula) {
  const double share = 4.0 * tests::parallel_corner(0.3, 0.3, 0.6);
  EXPECT_NEAR(share, 0.2394, 1e-4);
  EXPECT_NEAR(value(rule(16).at("trials").at(0)), std::log2(16.0 / (1.0 + 0.85 * 11.5 * share)), 1e-6);
}

TEST_F(RulesVerb, light_from_the_side_draws_grooves_that_light_from_the_front_does_not) {
  const json side = rule(25, "0.2 stop");
  EXPECT_EQ(side.at("verdict"), "holds");
  EXPECT_NEAR(value(side.at("trials").at(2)), 0.0, 0.02) << "by symmetry";
}

// An overcast sky (CIE type 16 and 1) looks alike all round: CIE S 011/E:2003, gradation only.
TEST_F(RulesVerb, an_overcast_sky_does_not_know_where_the_sun_is) {
  const json trial = rule(38, "0.2 stop").at("trials").at(0);
  EXPECT_THAT(trial.at("where").get<std::string>(), HasSubstr("overcast"));
  EXPECT_NEAR(value(trial), 0.0, 1e-9);
}

TEST_F(RulesVerb, each_verdict_is_counted_from_its_trials_and_all_forty_are_there) {
  const Outcome outcome = run({"rules", "--json", "--precision", "1 stop"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  std::set<int> numbers;
  const json document = json::parse(outcome.out);
  for (const json& each : document.at("rules")) {
    numbers.insert(each.at("rule").get<int>());
    if (!each.contains("trials")) {
      EXPECT_TRUE(each.at("verdict") == "not tried" || each.at("verdict") == "not decided by light");
      continue;
    }
    std::size_t met = 0;
    for (const json& trial : each.at("trials")) {
      ASSERT_FALSE(trial.at("value").at("value").is_null()) << each.at("rule") << trial.at("where");
      const bool above = trial.at("least").is_null() || value(trial) >= trial.at("least").get<double>(),
                 below = trial.at("most").is_null() || value(trial) <= trial.at("most").get<double>();
      EXPECT_EQ(trial.at("met").get<bool>(), above && below) << trial.at("where");
      met += trial.at("met").get<bool>() ? 1 : 0;
    }
    const std::size_t all = each.at("trials").size();
    EXPECT_EQ(each.at("verdict"), met == 0 ? "does not hold" : met == all ? "holds" : "holds when");
  }
  EXPECT_EQ(numbers.size(), 40u);
}

TEST_F(RulesVerb, the_page_has_a_table_and_each_rules_cases) {
  const Outcome outcome = run({"rules", "--rule", "10", "--rule", "24", "--rule", "22"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("| 24 | Key a stop over fill reads 3:1 | holds |"));
  EXPECT_THAT(outcome.out, HasSubstr("- half a stop less: light lost: 29.3 % (does not)"));
  EXPECT_THAT(outcome.out, HasSubstr("not decided by light"));
}

TEST_F(RulesVerb, other_words_are_refused) {
  EXPECT_EQ(run({"rules", "--rule", "41"}).status, 2);
  EXPECT_EQ(run({"rules", "a.toml"}).status, 2);
  EXPECT_EQ(run({"rules", "--seconds", "3"}).status, 2);
}

}  // namespace
}  // namespace fillside
