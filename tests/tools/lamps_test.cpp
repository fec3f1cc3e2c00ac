// Lamps on the command line: what is said of those that are off and of hot ones, and their part in readings.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

const std::string kBulb =
    "\n[[lamp]]\nname = \"bulb\"\nclock = 2\ndistance = \"30 cm\"\nlumens = \"2000 lm\"\n";
const std::string kNearBoard =
    "\n[[board]]\nname = \"near\"\nsheet = \"A4\"\nclock = 2\ndistance = \"40 cm\"\nfoot_gap = \"30 cm\"\n";

class Lamps : public ProgramTest {
 protected:
  Outcome told(const std::string& verb, const std::string& text,
               const std::vector<std::string>& more = {}) const {
    write("small.toml", text);
    return run(std::vector<std::string>{verb, "small.toml"} + kRoughly + more);
  }
};

TEST_F(Lamps, that_are_off_are_noted_by_check) {
  EXPECT_THAT(told("check", kSmallSet + kBulb).out,
              HasSubstr("note     lamp \"bulb\" is off; on = true switches it on"));
  EXPECT_THAT(told("check", kSmallSet + kBulb + "on = true\n").out, Not(HasSubstr("note")));
  EXPECT_THAT(told("check", kSmallSet + kBulb, {"--quiet"}).out, Not(HasSubstr("note")));
}

TEST_F(Lamps, near_a_board_are_cautioned_of_when_they_are_on) {
  const std::string on = kSmallSet + kBulb + "on = true\n" + kNearBoard;
  for (const std::string verb : {"check", "meter"}) {
    EXPECT_THAT(told(verb, on).out,
                HasSubstr("hot lamps: keep foam board, paper and cloth away (board \"near\" is"))
        << verb;
    EXPECT_THAT(told(verb, kSmallSet + kBulb + kNearBoard).out, Not(HasSubstr("hot lamps"))) << verb;
  }
  EXPECT_FALSE(json::parse(told("meter", on, {"--json"}).out).empty()) << "nothing but JSON";
}

TEST_F(Lamps, have_rows_and_may_be_the_key) {
  const std::string text = "[set]\nkey = \"bulb\"\n[room]\nwalls = 0.5\n" + kBulb + "on = true\n";
  const Outcome outcome = told("meter", text);
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("Key: bulb."));
  EXPECT_THAT(outcome.out, testing::ContainsRegex("bulb +straight +key"));
}

TEST_F(Lamps, are_switched_by_claims) {
  const std::string claims =
      "\n[[claim]]\nfigure = \"meter.dish up.lx\"\nat_least = 300.0\nwith = \"bulb\"\n"
      "\n[[claim]]\nfigure = \"meter.dish up.lx\"\nat_most = 300.0\nwithout = \"bulb\"\n";
  const std::string dim = "[[window]]\nname = \"w\"\n[daylight]\noutdoor = \"1000 lx\"\n";
  const Outcome outcome = told("check", dim + kBulb + claims);
  EXPECT_EQ(outcome.status, 0) << outcome.out << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("2 claims, all hold"));
}

}  // namespace
}  // namespace fillside
