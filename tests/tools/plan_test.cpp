// The plan as a person gets it: a card to read, pages to print, and the way back.
#include <gmock/gmock.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsSupersetOf;
using testing::Not;
using testing::StartsWith;

class Plan : public ProgramTest {
 protected:
  Plan() {
    write("small.toml",
          kSmallSet + "\n[[board]]\nname = \"second\"\nsheet = \"A4\"\nclock = 12\ndistance = \"40 cm\"\n");
  }
};

TEST_F(Plan, prints_the_card_and_writes_one_page_three_ways) {
  const Outcome outcome = run(std::vector<std::string>{"plan", "small.toml", "-o", "plans"} + kRoughly);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, StartsWith("Set card: "));
  EXPECT_THAT(outcome.out, HasSubstr("6. Check the readings"));
  EXPECT_THAT(files(),
              IsSupersetOf({"plans/small-plan.pdf", "plans/small-plan.png", "plans/small-plan.svg"}));
}

TEST_F(Plan, a_printed_card_gives_its_scene_back) {
  const Outcome printed = run(std::vector<std::string>{"plan", "small.toml"} + kRoughly);
  write("card.txt", printed.out);
  const Outcome scene = run({"plan", "--back", "card.txt"});
  ASSERT_EQ(scene.status, 0) << scene.err;
  write("again.toml", scene.out);
  const auto read = [&](const std::string& name) {
    return nlohmann::json::parse(run(std::vector<std::string>{"meter", name, "--json"} + kRoughly).out);
  };
  const auto one = read("small.toml"), other = read("again.toml");
  ASSERT_EQ(one["meters"].size(), other["meters"].size());
  for (std::size_t i = 0; i < one["meters"].size(); ++i)
    EXPECT_NEAR(one["meters"][i]["ev100"]["value"].get<double>(),
                other["meters"][i]["ev100"]["value"].get<double>(), 0.02);
}

TEST_F(Plan, a_card_with_a_mistake_says_where) {
  write("card.txt", "  board \"fill\"\n    at          somewhere\n");
  const Outcome outcome = run({"plan", "--back", "card.txt"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_THAT(outcome.err, StartsWith("card.txt:2:5: error: "));
  EXPECT_EQ(run({"plan", "--back", "no_such_card.txt"}).status, 3);
}

TEST_F(Plan, json_tells_every_measure_and_reading) {
  const Outcome outcome = run(std::vector<std::string>{"plan", "small.toml", "--json"} + kRoughly);
  const auto document = nlohmann::json::parse(outcome.out);
  EXPECT_EQ(document["schema"], "fillside.plan/1");
  EXPECT_EQ(document["steps"].size(), 6u);
  EXPECT_GE(document["readings"].size(), 5u);
  EXPECT_EQ(document["files"]["pdf"], "./small-plan.pdf");
}

TEST_F(Plan, cut_lists_sheets_cuts_price_and_cautions) {
  const Outcome outcome = run({"plan", "small.toml", "--cut", "--stock", "A1,50x70cm", "--price", "A1=3.20",
                               "--price", "50x70cm=2.40"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, StartsWith("Cut list: "));
  EXPECT_THAT(outcome.out, HasSubstr("2.40 in all"));
  EXPECT_THAT(outcome.out, HasSubstr("steel ruler"));
  EXPECT_THAT(outcome.out, Not(HasSubstr("Set card")));
  EXPECT_THAT(files(), IsSupersetOf({"small-cut.pdf", "small-cut.png", "small-cut.svg"}));
}

// Two A4 boards from one A1 sheet (ISO 216: 594 x 841 mm): each piece within the sheet, and what is left over
// is all but 2 x 210 x 297 mm.
TEST_F(Plan, cut_as_json_tells_pieces_cuts_and_waste) {
  const Outcome outcome = run({"plan", "small.toml", "--cut", "--stock", "A1", "--json"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const auto document = nlohmann::json::parse(outcome.out);
  EXPECT_EQ(document["schema"], "fillside.cut/1");
  ASSERT_EQ(document["sheets"].size(), 1u);
  ASSERT_EQ(document["sheets"][0]["pieces"].size(), 2u);
  for (const auto& piece : document["sheets"][0]["pieces"]) {
    EXPECT_LE(piece["left_m"].get<double>() + piece["width_m"].get<double>(), 0.841);
    EXPECT_LE(piece["bottom_m"].get<double>() + piece["height_m"].get<double>(), 0.841);
    EXPECT_NEAR(piece["width_m"].get<double>() * piece["height_m"].get<double>(), 0.210 * 0.297, 1e-9);
  }
  EXPECT_GE(document["sheets"][0]["cuts"].size(), 2u);
  EXPECT_NEAR(document["waste"].get<double>(), 1.0 - 2.0 * 0.210 * 0.297 / (0.594 * 0.841), 1e-9);
  EXPECT_TRUE(document["price"].is_null());
}

TEST_F(Plan, a_board_that_fits_no_sheet_is_told_with_its_line) {
  write("large.toml",
        kSmallSet + "\n[[board]]\nname = \"large\"\nsheet = \"A2\"\nclock = 12\ndistance = \"40 cm\"\n");
  const Outcome outcome = run({"plan", "large.toml", "--cut", "--stock", "A3"});
  EXPECT_EQ(outcome.status, 3);
  EXPECT_THAT(outcome.err,
              HasSubstr("board \"large\" of 59.4 x 42.0 cm fits on no sheet; the largest is A3"));
  EXPECT_THAT(outcome.err, HasSubstr("sheet = \"A2\""));
}

TEST_F(Plan, words_that_do_not_go_together_are_refused) {
  const auto refused = [&](std::vector<std::string> words, const std::string& hint) {
    const Outcome outcome = run(words);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_THAT(outcome.err, HasSubstr(hint));
    EXPECT_TRUE(is_one_line(outcome.err));
  };
  refused({"plan", "small.toml", "--stock", "A1"}, "go with --cut");
  refused({"plan", "small.toml", "--cut", "--stock", "B9"}, "\"B9\" is no sheet; write A1");
  refused({"plan", "small.toml", "--cut", "--price", "A1"}, "is no price of a sheet; write A1=3.20");
  refused({"plan", "small.toml", "--cut", "--stock", "A1", "--price", "A2=1"}, "is not among the sheets");
  refused({"plan", "small.toml", "--cut", "--kerf", "2"}, "is not a length from 0 mm to 1 cm");
  refused({"plan", "small.toml", "other.toml"}, "plan takes one scene");
  refused({"plan", "card.txt", "--back", "--cut"}, "--back prints the scene of a card");
}

}  // namespace
}  // namespace fillside
