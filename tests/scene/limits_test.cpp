// Files that are no scenes: refused with few words, whatever they hold.
#include "libsim/scene/limits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/scene/load.h"
#include "libsim/scene/set_size.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

std::vector<std::string> refusals(const std::string& text) {
  std::vector<Problem> warnings;
  std::vector<std::string> texts;
  try {
    load_description_text(text, "test.toml", {}, warnings);
  } catch (const SceneError& error) {
    for (const Problem& problem : error.problems()) texts.push_back(short_text(problem));
  }
  return texts;
}

std::string repeated(const std::string& text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

std::string numbered_keys(std::size_t count) {
  std::string all;
  for (std::size_t i = 0; i < count; ++i) all += "k" + std::to_string(i) + "=1\n";
  return all;
}

TEST(Limits, AHundredThousandBoardsAreOneProblemMoreThanTheirMissingSizes) {
  const auto said = refusals("[[window]]\n" + repeated("[[board]]\n", 100000));
  EXPECT_THAT(
      said,
      ElementsAre("202:1: error: there are more than 200 under the heading [[board]]; is this a scene?"));
}

TEST(Limits, TwoHundredOfAKindPass) {
  std::vector<Problem> warnings;
  const std::string board = "[[board]]\nsheet = \"A4\"\nused = false\n";
  EXPECT_THAT(load_description_text("[[window]]\n" + repeated(board, 200), "test.toml", {}, warnings).boards,
              SizeIs(200));
  EXPECT_THAT(refusals("[[window]]\n" + repeated(board, 201)), SizeIs(1));
}

TEST(Limits, UnknownKeysAreListedUpToAHundredLines) {
  EXPECT_THAT(refusals("[room]\n" + numbered_keys(100)), SizeIs(100));
  const auto said = refusals("[room]\n" + numbered_keys(100000));
  ASSERT_THAT(said, SizeIs(100));
  EXPECT_THAT(said.front(), HasSubstr("'k0' is not a key of the room"));
  EXPECT_EQ(said.back(), "101:1: error: room: 99901 more keys are not keys of the room; take them out");
}

TEST(Limits, KeysUnderNoHeadingAreListedUpToAHundredLines) {
  const auto said = refusals(numbered_keys(100000));
  ASSERT_THAT(said, SizeIs(100));
  EXPECT_THAT(said.back(), HasSubstr("there is too much wrong"));
}

TEST(Limits, ProblemsOfManyThingsAreListedUpToAHundredAndCounted) {
  const auto said = refusals("[[window]]\n" + repeated("[[board]]\n", 150));
  ASSERT_THAT(said, SizeIs(101));
  EXPECT_THAT(said.back(), HasSubstr("error: and at least 50 more; put these right first"));
}

TEST(Limits, NamesInATableAreLimited) {
  std::string names = "a = \"b\"";
  for (std::size_t i = 0; i < kMostNames; ++i) names += ", k" + std::to_string(i) + " = \"b\"";
  EXPECT_THAT(refusals("[[mesh]]\ngroups = { " + names + " }\n"),
              ElementsAre(HasSubstr("groups: more than 200 names")));
}

TEST(Limits, ACrowdThatStandsInItselfIsToldUpToAHundredTimes) {
  const auto said = refusals("[[window]]\n" + repeated("[[food]]\nkind = \"box\"\n", 50) +
                             repeated("[[board]]\nsheet = \"A4\"\n", 50));
  ASSERT_THAT(said, SizeIs(101));
  EXPECT_THAT(said.back(), HasSubstr("error: and at least 1 more"));
}

TEST(SetSize, TheFirstThingWithTooManyTrianglesIsFaultedAndNothingMoreGoesIn) {
  const MeshSection mesh;
  std::vector<Problem> problems;
  const FaultList faults(mesh, "mesh \"cup\"", problems);
  SetSize size(1000);
  EXPECT_TRUE(size.take_triangles(1000, faults, "file"));
  EXPECT_FALSE(size.take_triangles(1, faults, "file"));
  EXPECT_FALSE(size.take_triangles(0, faults, "file"));
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(
      short_text(problems.front()),
      "error: mesh \"cup\": with it the set has 1001 triangles; the limit is 1000; reduce the model, or "
      "take something out");
}

TEST(SetSize, APictureCountsOnceHoweverOftenItIsLaid) {
  const BoardSection board;
  std::vector<Problem> problems;
  const FaultList faults(board, "board", problems);
  const auto of = [](int width, int height) {
    return Pattern({width, height, std::vector<std::uint8_t>(3 * static_cast<std::size_t>(width * height))});
  };
  const Pattern small = of(10, 10), other = of(10, 11);
  SetSize size(kMostTriangles, 200);
  EXPECT_TRUE(size.take_picture(small, faults, "picture"));
  EXPECT_TRUE(size.take_picture(small, faults, "picture"));
  EXPECT_FALSE(size.take_picture(other, faults, "picture"));
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_THAT(problems.front().message, HasSubstr("0.0 megapixels; the limit is 0.0002"));
}

TEST(LimitsTable, AgreesWithTheFieldTableOnPixels) {
  CameraSection camera;
  fields(
      [](const Field& field, const auto&) {
        if (field.key != "pixels") return;
        EXPECT_EQ(field.least, kFewestPixels);
        EXPECT_EQ(field.most, kMostPixels);
      },
      camera);
}

TEST(Shortened, KeepsErrorsBeforeWarnings) {
  std::vector<Problem> problems(2 * kMostProblems);
  for (std::size_t i = 0; i < problems.size(); ++i) {
    problems[i].place = {"f", static_cast<int>(i + 1), 1};
    if (i < kMostProblems) problems[i].severity = Severity::warning;
  }
  const auto kept = shortened(problems);
  ASSERT_THAT(kept, SizeIs(kMostProblems + 1));
  EXPECT_TRUE(any_error(kept));
  EXPECT_EQ(kept.front().place.line, static_cast<int>(kMostProblems) + 1);
  EXPECT_EQ(kept.back().message, "and at least 100 more");
  EXPECT_EQ(kept.back().severity, Severity::warning);
}

}  // namespace
}  // namespace fillside
