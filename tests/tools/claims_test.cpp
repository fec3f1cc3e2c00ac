// check: what a scene claims is measured, and the answer is the exit status. scene: the starter passes.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;

const std::string kTrue = R"(
[[claim]]
figure = "subject.stops"
at_least = 0.0
reason = "the window side is the brighter one"
)";
const std::string kFalse = R"(
[[claim]]
figure = "meter.dish up.lx"
at_most = 1.0
)";

class Claims : public ProgramTest {
 protected:
  Outcome check(const std::string& text, const std::vector<std::string>& more = {}) const {
    write("small.toml", text);
    return run(std::vector<std::string>{"check", "small.toml", "--precision", "0.5 stop"} + more);
  }
};

TEST_F(Claims, that_hold_give_status_0_and_one_that_fails_status_1) {
  const Outcome holds = check(kSmallSet + kTrue);
  EXPECT_EQ(holds.status, 0);
  EXPECT_THAT(holds.out, HasSubstr("1 claim, all hold"));
  EXPECT_THAT(holds.out, HasSubstr("the window side is the brighter one"));
  const Outcome fails = check(kSmallSet + kTrue + kFalse);
  EXPECT_EQ(fails.status, 1);
  EXPECT_THAT(fails.out, HasSubstr("NOT ALL HOLD"));
  EXPECT_THAT(fails.out, HasSubstr("FAILS  meter.dish up.lx at most 1:"));
  EXPECT_EQ(check(kSmallSet).status, 0);
}

TEST_F(Claims, about_a_figure_that_is_not_there_are_bad_input_with_line_and_list) {
  const Outcome outcome = check("[[claim]]\nfigure = \"subject.stosp\"\nat_least = 1.0\n" + kSmallSet);
  EXPECT_EQ(outcome.status, 3);
  EXPECT_EQ(outcome.out, "");
  EXPECT_THAT(outcome.err, testing::StartsWith("small.toml:2:"));
  EXPECT_THAT(outcome.err, HasSubstr("did you mean subject.stops?"));
  for (const char* figure :
       {"empty_spot.lit_to_shadow", "meter.food shadow.lx|key_lx|fill_lx|key_to_fill|ev100",
        "board.fill.gain.METER", "plane.table.evenness"})
    EXPECT_THAT(outcome.err, HasSubstr(figure));
}

TEST_F(Claims, one_failing_scene_among_several_decides) {
  write("true.toml", kSmallSet + kTrue);
  EXPECT_EQ(check(kSmallSet + kFalse, {"true.toml"}).status, 1);
}

TEST_F(Claims, as_json_are_valid_for_one_scene_and_for_several) {
  const json one = json::parse(check(kSmallSet + kTrue + kFalse, {"--json"}).out);
  EXPECT_EQ(one.at("schema"), "fillside.check/1");
  EXPECT_EQ(one.at("all_hold"), false);
  ASSERT_EQ(one.at("claims").size(), 2u);
  EXPECT_EQ(one.at("claims")[0].at("holds"), true);
  EXPECT_EQ(one.at("claims")[1].at("holds"), false);
  EXPECT_GT(one.at("claims")[1].at("value").get<double>(), 1.0);
  write("true.toml", kSmallSet + kTrue);
  const json two = json::parse(check(kSmallSet, {"true.toml", "--json"}).out);
  ASSERT_EQ(two.size(), 2u);
  EXPECT_EQ(two[1].at("all_hold"), true);
}

TEST_F(Claims, are_not_measured_by_full_whose_output_is_the_same_scene) {
  const Outcome full = check(kSmallSet + kFalse, {"--full"});
  EXPECT_EQ(full.status, 0);
  EXPECT_THAT(full.out, HasSubstr("sill"));  // a key the scene left to its default
  write("full.toml", full.out);
  const auto hash = [&](const std::string& scene) {
    const Outcome outcome = run(std::vector<std::string>{"check", scene, "--json"} + kRoughly);
    EXPECT_EQ(outcome.status, 1) << outcome.err;  // its claim is false
    return json::parse(outcome.out).at("scene_hash").get<std::string>();
  };
  EXPECT_EQ(hash("full.toml"), hash("small.toml"));
}

TEST_F(Claims, cautions_are_given_where_they_fit) {
  write("foil.toml", kSmallSet + "surface = \"crumpled kitchen foil\"\n");
  EXPECT_THAT(run(std::vector<std::string>{"check", "foil.toml"} + kRoughly).out,
              HasSubstr("never leave them"));
  EXPECT_THAT(check(kSmallSet).out, testing::Not(HasSubstr("caution")));
}

class Starter : public ProgramTest {};

TEST_F(Starter, is_short_teaches_and_passes_check_and_meter) {
  EXPECT_EQ(run({"scene", "new.toml"}).status, 0);
  const std::string text = bytes_of(at("new.toml"));
  EXPECT_LE(std::ranges::count(text, '\n'), 20);
  EXPECT_GE(std::ranges::count(text, '#'), 8);
  EXPECT_EQ(run({"scene"}).out, text);
  const Outcome check = run({"check", "new.toml"}),
                meter = run(std::vector<std::string>{"meter", "new.toml"} + kRoughly);
  EXPECT_EQ(check.status, 0);
  EXPECT_EQ(meter.status, 0);
  EXPECT_EQ(check.err + meter.err, "");
}

TEST_F(Starter, suggests_only_what_there_is) {
  const std::string text = run({"scene"}).out;
  const auto kinds =
      text.substr(text.find("# or ball"), text.find('\n', text.find("# or ball")) - text.find("# or ball"));
  for (const std::string kind :
       {"ball", "egg", "plate", "bowl", "layer cake", "loaf", "dumpling", "jar", "tumbler", "box"})
    EXPECT_THAT(kinds, HasSubstr(kind));
  write("new.toml", text);
  for (const std::string edit :
       {"board.fill.surface=black foam board", "board.fill.surface=crumpled kitchen foil"}) {
    EXPECT_THAT(text, HasSubstr('"' + edit.substr(edit.find('=') + 1) + '"'));
    EXPECT_EQ(run({"check", "new.toml", "--set", edit}).status, 0);
  }
}

}  // namespace
}  // namespace fillside
