#include "libsim/base/problem.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

Problem at(int line, int column, std::string message) {
  return {.place = {"tart.toml", line, column}, .message = std::move(message), .remedy = ""};
}

TEST(Problem, is_written_with_place_remedy_line_and_caret) {
  Problem problem = at(6, 3, "board \"fill\": 'wdth' is not a key of a board");
  problem.remedy = "did you mean width?";
  problem.source_line = "  wdth = \"60 cm\"";
  EXPECT_EQ(to_text(problem),
            "tart.toml:6:3: error: board \"fill\": 'wdth' is not a key of a board; did you mean width?\n"
            "      wdth = \"60 cm\"\n"
            "      ^");
}

TEST(Problem, tabs_and_carriage_returns_do_not_move_the_caret) {
  Problem problem = at(1, 2, "bad");
  problem.source_line = "\tx = 1\r";
  EXPECT_EQ(to_text(problem), "tart.toml:1:2: error: bad\n     x = 1\n     ^");
}

TEST(Problem, without_a_known_line_has_no_caret) {
  EXPECT_EQ(to_text(at(0, 0, "is empty")), "tart.toml: error: is empty");
  EXPECT_EQ(to_text(Problem{.place = {}, .message = "is empty", .remedy = {}}), "error: is empty");
  Problem warning = at(2, 1, "mind the sun");
  warning.severity = Severity::warning;
  EXPECT_EQ(to_text(warning), "tart.toml:2:1: warning: mind the sun");
}

TEST(Problem, a_long_line_is_cut_between_characters) {
  Problem problem = at(1, 1, "bad");
  problem.source_line = std::string(119, 'a') + "°°";  // the 120th byte is the first half of a degree sign
  EXPECT_NE(to_text(problem).find(std::string(119, 'a') + "\n"), std::string::npos);
  problem.place.column = 500;
  EXPECT_EQ(to_text(problem), "tart.toml:1:500: error: bad");
}

TEST(Problems, are_sorted_by_position_and_repetitions_dropped) {
  Problem other_file = at(1, 1, "first in another file");
  other_file.place.file = "apple.toml";
  const auto sorted =
      in_order({at(9, 1, "c"), at(10, 1, "d"), at(2, 7, "b"), at(2, 3, "a"), at(9, 1, "c"), other_file});
  std::string messages;
  for (const Problem& problem : sorted) messages += problem.message + '|';
  EXPECT_EQ(messages, "first in another file|a|b|c|d|");
}

TEST(Problems, a_warning_alone_is_no_error) {
  Problem warning = at(1, 1, "mind the sun");
  warning.severity = Severity::warning;
  EXPECT_FALSE(any_error({warning}));
  EXPECT_TRUE(any_error({warning, at(2, 1, "bad")}));
}

TEST(SceneError, says_every_problem_in_order) {
  const SceneError error({at(4, 1, "later"), at(2, 1, "sooner")});
  EXPECT_STREQ(error.what(), "tart.toml:2:1: error: sooner\ntart.toml:4:1: error: later\n");
  EXPECT_EQ(error.problems().size(), 2u);
}

TEST(Problem, a_line_that_would_move_the_cursor_is_shown_without_its_controls) {
  const Problem problem{{"a.obj", 1, 2}, "wrong", "right", Severity::error, "\tv \x1b[2J\x07 0"};
  EXPECT_EQ(to_text(problem), "a.obj:1:2: error: wrong; right\n     v ?[2J? 0\n     ^");
}

}  // namespace
}  // namespace fillside
