#include "libsim/scene/describe.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(Describe, AbsentKeysKeepTheirDefaults) {
  const Description description = described("[[window]]\n[[board]]\nsheet = \"A3\"\n");
  ASSERT_EQ(description.windows.size(), 1u);
  EXPECT_EQ(description.windows[0].clock.hours, WindowSection{}.clock.hours);
  EXPECT_FALSE(description.windows[0].distance);
  EXPECT_EQ(description.boards.at(0).finish.surface, BoardSection{}.finish.surface);
}

TEST(Describe, ReadsEveryTypeOfMember) {
  const Description d = described(
      "[set]\nseed = 3\n[daylight]\noutdoor = \"12 klx\"\nwindow_luminance = \"2 kcd/m2\"\n"
      "[[window]]\nclock = \"9:30\"\ndistance = \"24 in\"\nused = false\n"
      "[[mesh]]\nfile = \"a.obj\"\ngroups = { crust = \"rye crust\", \"two words\" = \"light oak\" }\n"
      "[table]\ncolour = \"#ff8000\"\n[camera]\nelevation = \"30 deg\"\naperture = \"f/8\"\n"
      "[[meter]]\nsubject = \"away\"\n");
  EXPECT_EQ(d.set.seed, 3);
  EXPECT_EQ(d.daylight.outdoor->si, 12000.0);
  EXPECT_EQ(d.daylight.window_luminance->si, 2000.0);
  EXPECT_EQ(d.windows[0].clock.hours, 9.5);
  EXPECT_DOUBLE_EQ(d.windows[0].distance->si, 0.6096);
  EXPECT_FALSE(d.windows[0].used);
  EXPECT_THAT(d.meshes[0].groups,
              ElementsAre(testing::Pair("crust", "rye crust"), testing::Pair("two words", "light oak")));
  EXPECT_EQ(d.table.finish.colour->linear[0], 1.0);
  EXPECT_EQ(d.table.finish.colour->linear[2], 0.0);
  EXPECT_DOUBLE_EQ(in_degrees(*d.camera.elevation), 30.0);
  EXPECT_EQ(d.camera.aperture.si, 8.0);
  EXPECT_EQ(*d.meters[0].subject, "away");
}

TEST(Describe, FoodIsTheSubjectAndPropsAreNotInTheOrderOfTheFile) {
  const Description d =
      described("[[prop]]\nkind = \"plate\"\n[[food]]\nkind = \"egg\"\n[[prop]]\nkind = \"jar\"\n");
  ASSERT_EQ(d.items.size(), 3u);
  EXPECT_EQ(d.items[0].name, "plate");
  EXPECT_FALSE(d.items[0].subject);
  EXPECT_EQ(d.items[1].name, "egg");
  EXPECT_TRUE(d.items[1].subject);
  EXPECT_EQ(d.items[2].name, "jar");
}

TEST(Describe, ThingsWithoutANameAreNumberedAmongTheirLikes) {
  const Description d = described(
      "[[window]]\n[[window]]\nclock = 12\n[[board]]\nname = \"fill\"\n[[board]]\n"
      "[[food]]\nkind = \"egg\"\n[[prop]]\nkind = \"egg\"\n[[mesh]]\nfile = \"shapes/rye loaf.obj\"\n");
  EXPECT_EQ(d.windows[0].name, "window");
  EXPECT_EQ(d.windows[1].name, "window 2");
  EXPECT_EQ(d.boards[0].name, "fill");
  EXPECT_EQ(d.boards[1].name, "board 2");
  EXPECT_EQ(d.items[0].name, "egg");
  EXPECT_EQ(d.items[1].name, "egg 2");
  EXPECT_EQ(d.meshes[0].name, "rye loaf");
}

TEST(Describe, ASingleTableIsAListOfOne) {
  const Description d = described("[window]\nclock = 3\n");
  ASSERT_EQ(d.windows.size(), 1u);
  EXPECT_EQ(d.windows[0].clock.hours, 3.0);
}

TEST(Describe, SectionsKnowWhereTheyAndTheirKeysStood) {
  const Description d = described("[[board]]\nsheet = \"A3\"\n\n  [[board]]\n  lean = \"5 deg\"\n");
  EXPECT_EQ(d.boards[1].place.line, 4);
  EXPECT_EQ(d.boards[1].place_of("lean").line, 5);
  EXPECT_EQ(d.boards[1].place_of("lean").column, 3);
  EXPECT_EQ(d.boards[1].place_of("sheet").line, 4) << "an absent key is where its section is";
}

TEST(Describe, BoundsAreInclusive) {
  EXPECT_THAT(faults_of("[room]\nwalls = 1\nceiling = 0\n"), IsEmpty());
  EXPECT_THAT(faults_of("[room]\nwalls = 1.0000001\n"), ElementsAre(HasSubstr("too large")));
}

TEST(Describe, AFaultyValueLeavesTheDefaultAndTheRestIsRead) {
  std::vector<Problem> problems;
  const SourceTree tree{"t",
                        "",
                        {{{"room",
                           {},
                           {{},
                            SourceTable{{{"walls", {}, {{}, SourceNumber{7.0, true}}},
                                         {"floor", {}, {{}, SourceNumber{0.1, false}}}}}}}}}};
  const Description d = describe(tree, problems);
  EXPECT_EQ(problems.size(), 1u);
  EXPECT_EQ(d.room.walls, RoomSection{}.walls);
  EXPECT_EQ(d.room.floor, 0.1);
}

TEST(Describe, ControlCharactersOfAFileDoNotReachTheMessage) {
  const auto faults = faults_of("[room]\n\"wa\\u001Blls\" = 1\n");
  ASSERT_EQ(faults.size(), 1u);
  EXPECT_EQ(faults[0].find('\x1B'), std::string::npos);
}

TEST(Describe, RangesAreToldInTheKindsOwnUnits) {
  EXPECT_THAT(faults_of("[[board]]\nlean = \"3 rad\"\n"), ElementsAre(HasSubstr("-90 deg to 90 deg")));
  EXPECT_THAT(faults_of("[room]\ndepth = \"1 mm\"\n"), ElementsAre(HasSubstr("30 cm to 100 m")));
  EXPECT_THAT(faults_of("[camera]\naperture = \"f/900\"\n"), ElementsAre(HasSubstr("f/0.5 to f/128")));
  EXPECT_THAT(faults_of("[daylight]\noutdoor = \"-1 lx\"\n"), ElementsAre(HasSubstr("0 lx to 200000 lx")));
  EXPECT_THAT(faults_of("[[claim]]\ntolerance = -1\n"), ElementsAre(HasSubstr("it may be 0 or more")));
}

}  // namespace
}  // namespace fillside
