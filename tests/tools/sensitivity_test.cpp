// fillside sensitivity, as a person types it.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

class SensitivityVerb : public ProgramTest {
 protected:
  SensitivityVerb() { write("small.toml", kSmallSet); }
  const Words board{"sensitivity", "small.toml", "--keys", "board", "--precision", "0.05 stop"};

  void expect_bad_input(const Words& more, const std::string& hint) const {
    const Outcome outcome = run(board + more);
    EXPECT_EQ(outcome.status, 3);
    EXPECT_EQ(outcome.out, "");
    EXPECT_THAT(outcome.err, HasSubstr(hint));
  }
};

TEST_F(SensitivityVerb, says_what_to_measure_first_what_it_is_per_unit_and_what_is_at_stake) {
  const Outcome outcome = run(board);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out,
              AllOf(HasSubstr("lit:shadow of the subject: "), HasSubstr("exposure value at dish up: "),
                    HasSubstr("measure first  board.fill."), HasSubstr("per cm"), HasSubstr("by tape"),
                    HasSubstr("All of it together leaves ±"), Not(HasSubstr("room.walls"))));
}

TEST_F(SensitivityVerb, the_document_ranks_and_names_the_unit) {
  const json document = json::parse(
      run(board + Words{"--json", "--of", "subject.stops", "--off-by", "board.fill.distance=5cm"}).out);
  EXPECT_EQ(document.at("schema"), "fillside.sensitivity/1");
  const json& figure = document.at("figures").at(0);
  EXPECT_EQ(figure.at("figure"), "subject.stops");
  double before = 1e9;
  for (const json& input : figure.at("inputs")) {
    const double move = std::abs(input.at("moves_it_by").at("value").get<double>());
    EXPECT_LE(move, before);
    before = move;
    if (input.at("key") != "board.fill.distance") continue;
    EXPECT_EQ(input.at("off_by"), "5 cm");
    EXPECT_EQ(input.at("per"), "cm");
    EXPECT_NEAR(move, 5.0 * std::abs(input.at("slope").at("value").get<double>()), 1e-9);
  }
}

TEST_F(SensitivityVerb, the_same_seed_gives_the_same_bytes_for_any_number_of_threads) {
  const Words words = board + Words{"--of", "subject.stops"};
  EXPECT_EQ(run(words + Words{"--threads", "1"}).out, run(words + Words{"--threads", "2"}).out);
}

TEST_F(SensitivityVerb, mistakes_are_told_together_with_a_remedy) {
  expect_bad_input({"--of", "subject.stop"}, "did you mean subject.stops?");
  expect_bad_input({"--keys", "borad"}, "no number of this set that can be varied is called so");
  expect_bad_input({"--off-by", "board.fill.distnce=3cm"}, "did you mean board.fill.distance?");
  expect_bad_input({"--off-by", "board.fill.distance=3"}, "board.fill.distance=60 cm");
  expect_bad_input({"--off-by", "board.fill.distance=3", "--of", "nothing"}, "--of nothing");
  EXPECT_EQ(run({"sensitivity", "small.toml", "--off-by", "board"}).status, 2);
  EXPECT_EQ(run({"sensitivity", "small.toml", "small.toml"}).status, 2);
}

}  // namespace
}  // namespace fillside
