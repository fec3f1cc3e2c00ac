// fillside place: where a board has to stand for a wish, as a person types it.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using Words = std::vector<std::string>;

class PlaceVerb : public ProgramTest {
 protected:
  PlaceVerb() { write("small.toml", kSmallSet); }
  Outcome place(const std::string& want, const Words& more = {}) const {
    return run(Words{"place", "small.toml", "--want", want, "--move", "board.fill.distance=10cm..40cm"} +
               more);
  }
};

TEST_F(PlaceVerb, tells_the_place_and_from_where_to_where_it_holds) {
  const Outcome outcome = place("lit:shadow = 3:1");
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out,
              AllOf(HasSubstr("Reached.\n"), HasSubstr("board.fill.distance"), HasSubstr("  holds\n"),
                    HasSubstr("To look at it: fillside render small.toml --set board.fill.distance=")));
}

// What it found is what `meter` reads there: the answer can be held against the other verb.
TEST_F(PlaceVerb, what_it_found_reads_as_it_said) {
  const json found = json::parse(place("lit:shadow = 3:1", {"--json"}).out);
  ASSERT_TRUE(found.at("reached"));
  const std::string set = "board.fill.distance=" + found.at("keys").at(0).at("value").get<std::string>();
  const json read = json::parse(run({"meter", "small.toml", "--json", "--set", set}).out);
  const auto& said = found.at("wants").at(0).at("value");
  const auto& is = read.at("subject").at("lit_to_shadow");
  EXPECT_NEAR(is.at("value").get<double>(), said.at("value").get<double>(),
              is.at("half_width_95").get<double>() + said.at("half_width_95").get<double>());
}

TEST_F(PlaceVerb, what_cannot_be_reached_is_missed_by_so_much_with_status_1) {
  const Outcome outcome = place("lit:shadow = 1.01:1", {"--precision", "0.2 stop"});
  EXPECT_EQ(outcome.status, 1);
  EXPECT_THAT(outcome.out, AllOf(HasSubstr("Cannot be reached with what may move. The best there is misses "
                                           "\"lit:shadow = 1.01:1\" by 1."),
                                 HasSubstr("  missed\n")));
}

TEST_F(PlaceVerb, words_it_does_not_know_are_told_with_status_2) {
  const auto expect_refusal = [](const Outcome& outcome, const std::string& words) {
    EXPECT_EQ(outcome.status, 2);
    EXPECT_THAT(outcome.err, HasSubstr(words));
    EXPECT_TRUE(is_one_line(outcome.err));
  };
  expect_refusal(place("lit:shadow = 3:1", {"--prefer", "nearest"}),
                 "--prefer: \"nearest\" is not smallest, farthest or easiest");
  expect_refusal(place("lit:shadow = 3:1", {"small.toml"}),
                 "place takes one scene; \"small.toml\" is a second one");
}

}  // namespace
}  // namespace fillside
