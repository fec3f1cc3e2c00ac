#include "libsim/scene/wording.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace fillside {
namespace {

TEST(Wording, DistanceCountsEditsAndSwaps) {
  EXPECT_EQ(edit_distance("width", "width"), 0u);
  EXPECT_EQ(edit_distance("wdth", "width"), 1u);
  EXPECT_EQ(edit_distance("heigth", "height"), 1u) << "a swap of neighbours is one edit";
  EXPECT_EQ(edit_distance("ca", "abc"), 3u) << "optimal string alignment, not the unrestricted distance of 2";
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("", "abc"), 3u);
}

RC_GTEST_PROP(WordingProperty, DistanceIsSymmetricAndBounded, (const std::string& a, const std::string& b)) {
  const std::size_t distance = edit_distance(a, b);
  RC_ASSERT(distance == edit_distance(b, a));
  RC_ASSERT(distance <= std::max(a.size(), b.size()));
  RC_ASSERT(distance >= std::max(a.size(), b.size()) - std::min(a.size(), b.size()));
}

TEST(Wording, SuggestsOnlyWhatIsNear) {
  const std::vector<std::string> keys{"width", "height", "x", "y"};
  EXPECT_EQ(nearest("hieght", keys), "height");
  EXPECT_EQ(nearest("WIDTH", keys), "width");
  EXPECT_EQ(nearest("photographer", keys), "");
  EXPECT_EQ(nearest("q", keys), "") << "one letter is no misspelling of another";
  EXPECT_EQ(suggestion("photographer", keys, "its keys are"), "its keys are: width, height, x or y");
}

TEST(Wording, LongAndWildTextsAreCutAndTamed) {
  EXPECT_EQ(in_quotes("a\nb\x1B"), "\"a?b?\"");
  const std::string cut = tame(std::string(59, 'a') + "\xC3\xA9" + std::string(100, 'b'));
  EXPECT_EQ(cut, std::string(59, 'a') + "...") << "not in the middle of a character";
}

TEST(Wording, EachProblemOfTheFileGetsItsLine) {
  std::vector<Problem> problems{problem_at({"a", 2, 1}, "m"), problem_at({"--set x", 0, 0}, "m"),
                                problem_at({"a", 9, 1}, "m")};
  attach_source_lines(problems, "a", "one\r\ntwo\r\n");
  EXPECT_EQ(problems[0].source_line, "two");
  EXPECT_EQ(problems[1].source_line, "");
  EXPECT_EQ(problems[2].source_line, "");
}

}  // namespace
}  // namespace fillside
