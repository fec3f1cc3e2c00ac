// The words of the command: help, version, and every way to get them wrong.
#include <gmock/gmock.h>

#include <sstream>

#include "tests/tools/program.h"

namespace fillside {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const std::vector<std::string> kVerbs{"scene",    "check",  "meter",  "map",         "render",
                                      "compare",  "series", "place",  "sensitivity", "rules",
                                      "calendar", "plan",   "report", "lesson"};

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) widest = std::max(widest, line.size());
  return widest;
}

class Words : public ProgramTest {
 protected:
  /// Usage faults: status 2, nothing said on standard output, one line with the hint.
  void expect_misuse(const std::vector<std::string>& words, const std::string& hint) const {
    SCOPED_TRACE(testing::PrintToString(words));
    const Outcome outcome = run(words);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_TRUE(is_one_line(outcome.err));
    EXPECT_THAT(outcome.err, HasSubstr(hint));
    EXPECT_THAT(outcome.err, Not(HasSubstr("required")));  // the argument reader's own words
  }
};

TEST_F(Words, help_fits_one_screen_and_teaches_the_trade) {
  const Outcome help = run({"--help"});
  EXPECT_EQ(help.status, 0);
  EXPECT_EQ(help.err, "");
  EXPECT_LE(widest_line(help.out), 100u);
  EXPECT_LE(std::ranges::count(help.out, '\n'), 40);
  for (const std::string& verb : kVerbs) EXPECT_THAT(help.out, HasSubstr("\n  " + verb + " "));
  for (const char* word : {"key ", "fill ", "stop ", "lit:shadow ", "falloff ", "clock "})
    EXPECT_THAT(help.out, HasSubstr(std::string("\n  ") + word));
}

TEST_F(Words, each_verbs_help_has_an_example_that_starts_with_the_verb) {
  for (const std::string& verb : kVerbs) {
    const Outcome help = run({verb, "--help"});
    EXPECT_EQ(help.status, 0);
    EXPECT_LE(widest_line(help.out), 100u) << help.out;
    EXPECT_THAT(help.out, HasSubstr("Example:\n  fillside " + verb + " "));
  }
  EXPECT_THAT(run({"meter", "--help"}).out, HasSubstr("array"));
}

TEST_F(Words, no_words_give_the_help_as_a_fault) {
  const Outcome outcome = run({});
  EXPECT_EQ(outcome.status, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_EQ(outcome.err, run({"--help"}).out);
}

TEST_F(Words, version_is_the_first_line_and_then_what_it_was_built_with) {
  const Outcome outcome = run({"--version"});
  EXPECT_EQ(outcome.status, 0);
  const std::size_t first = outcome.out.find('\n') + 1;
  EXPECT_THAT(outcome.out.substr(0, first), testing::MatchesRegex("fillside [0-9]+\\.[0-9]+\\.[0-9]+\n"));
  const std::string rest = outcome.out.substr(first);
  EXPECT_THAT(rest, testing::ContainsRegex("Built with [A-Za-z]+ [0-9]+\\."));
  for (const char* library :
       {"Embree", "Eigen", "tinyobjloader", "toml\\+\\+", "fmt", "CLI11", "NLopt", "OpenEXR"})
    EXPECT_THAT(rest, testing::ContainsRegex(std::string(library) + " [0-9]"));
  EXPECT_THAT(rest, testing::HasSubstr("notices.txt"));
}

TEST_F(Words, misspelt_words_meet_their_nearest) {
  expect_misuse({"metr", "a.toml"}, "did you mean meter?");
  expect_misuse({"meter", "a.toml", "--presicion", "0.1 stop"}, "did you mean --precision?");
  expect_misuse({"map", "a.toml", "--cels=9"}, "did you mean --cells?");
  expect_misuse({"paint", "a.toml"}, "sensitivity, rules, calendar, plan, report or lesson");
  expect_misuse({"--json", "meter", "a.toml"}, "options come after it");
}

TEST_F(Words, a_bad_value_is_told_with_a_good_one) {
  expect_misuse({"meter", "a.toml", "--precision", "0.05"},
                "has no unit; for example --precision \"0.05 stop\"");
  expect_misuse({"meter", "a.toml", "--precision", "5 cm"}, "is a length");
  expect_misuse({"meter", "a.toml", "--precision", "0 stop"}, "not above zero");
  expect_misuse({"meter", "a.toml", "--seconds", "-1"}, "not a time above zero");
  expect_misuse({"meter", "a.toml", "--seconds", "nan"}, "--seconds");
  expect_misuse({"meter", "a.toml", "--threads", "x"}, "whole number from 0 to 256");
  expect_misuse({"meter", "a.toml", "--seed", "-1"}, "whole number from 0");
  expect_misuse({"map", "a.toml", "--cells", "1"}, "whole number from 4 to 1024");
  expect_misuse({"render", "a.toml", "--pixels", "7.5"}, "whole number from 8 to 8000");
  expect_misuse({"render", "a.toml", "--brighter", "1"}, "has no unit");
}

TEST_F(Words, what_is_missing_or_too_much_is_named) {
  expect_misuse({"meter"}, "meter needs a scene");
  expect_misuse({"meter", "a.toml", "--seed"}, "--seed needs a value");
  expect_misuse({"map", "a.toml", "-o"}, "-o needs a value");
  expect_misuse({"map", "a.toml", "-o", "--json"}, "--out needs a value, not \"--json\"");
  expect_misuse({"map", "a.toml", "b.toml"}, "map takes one scene; \"b.toml\" is a second one");
  expect_misuse({"scene", "a.toml", "b.toml"}, "scene writes one file");
  expect_misuse({"meter", "a.toml", "--json=yes"}, "a value stands where none is taken");
  expect_misuse({"meter", "-", "-"}, "standard input (-) can be read only once");
  expect_misuse({"meter", "a.toml", "--precision", "1 stop", "--seconds", "3"}, "give one of the two");
  expect_misuse({"check", "a.toml", "b.toml", "--full"}, "one scene at a time");
  EXPECT_THAT(files(), IsEmpty());
}

TEST_F(Words, an_edit_does_not_swallow_the_scene_after_it) {
  write("small.toml", kSmallSet);
  EXPECT_EQ(run({"meter", "--set", "room.walls=0.1", "small.toml", "--precision", "2 stops"}).status, 0);
}

}  // namespace
}  // namespace fillside
