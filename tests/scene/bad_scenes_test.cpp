// tests/bad_scenes holds one mistake (or one bunch of them) a file. The comments at a file's head, `# expect:
// `, are all that may be said of it, in order.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "libsim/scene/load.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

std::vector<std::string> expected_of(const std::string& text) {
  constexpr std::string_view kMark = "# expect: ";
  std::vector<std::string> expected;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line) && line.starts_with(kMark);)
    expected.push_back(line.substr(kMark.size()));
  return expected;
}

std::vector<Problem> problems_of(const std::string& path) {
  std::vector<Problem> warnings;
  try {
    load_description(path, {}, warnings);
  } catch (const SceneError& error) {
    return error.problems();
  }
  return {};
}

TEST(BadScenes, EachIsToldEveryMistakeInItAndNothingElse) {
  const auto paths = scenes_in("tests/bad_scenes");
  EXPECT_GE(paths.size(), 70u);
  for (const std::string& path : paths) {
    std::vector<std::string> said;
    for (const Problem& problem : problems_of(path)) said.push_back(short_text(problem));
    const auto expected = expected_of(bytes_of(path));
    EXPECT_FALSE(expected.empty()) << path;
    EXPECT_THAT(said, testing::ElementsAreArray(expected)) << path;
  }
}

TEST(BadScenes, EveryProblemWithALineShowsThatLine) {
  for (const std::string& path : scenes_in("tests/bad_scenes"))
    for (const Problem& problem : problems_of(path)) {
      EXPECT_EQ(problem.place.file, path);
      EXPECT_EQ(problem.source_line.empty(), problem.place.line == 0) << to_text(problem);
    }
}

TEST(BadScenes, TheCaretStandsUnderTheFault) {
  std::vector<Problem> warnings;
  try {
    load_description_text("[[window]]\ndistance = 60\n", "tart.toml", {}, warnings);
    FAIL() << "a length without a unit was taken";
  } catch (const SceneError& error) {
    EXPECT_STREQ(error.what(),
                 "tart.toml:2:12: error: window: distance: 60 has no unit; write it as \"60 cm\"\n"
                 "    distance = 60\n"
                 "               ^\n");
  }
}

}  // namespace
}  // namespace fillside
