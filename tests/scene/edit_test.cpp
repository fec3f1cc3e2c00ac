#include "libsim/scene/edit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "libsim/scene/describe.h"
#include "libsim/scene/toml_reader.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;

constexpr const char* kScene =
    "[[window]]\nclock = 9\n[[board]]\nname = \"fill\"\nsheet = \"A3\"\n[[board]]\nname = \"left card 1.5\"\n"
    "[[meter]]\n[[mesh]]\nfile = \"loaf.obj\"\ngroups = { crust = \"rye crust\" }\n";

Description edited(const std::vector<std::string>& edits) {
  std::vector<Problem> problems;
  SourceTree tree = read_scene_text(kScene, "test.toml");
  for (const std::string& edit : edits) apply_edit(tree, edit, problems);
  const Description description = describe(tree, problems);
  for (const Problem& problem : problems) ADD_FAILURE() << to_text(problem);
  return description;
}

TEST(Edit, ChangesAValueByNameAndKey) {
  EXPECT_EQ(edited({"board.fill.distance=30cm"}).boards[0].spot.distance->si, 0.3);
  EXPECT_EQ(edited({"board.fill.distance = \"30 cm\""}).boards[0].spot.distance->si, 0.3);
  EXPECT_EQ(edited({"board.fill.sheet=A2"}).boards[0].sheet, "A2");
  EXPECT_EQ(edited({"board.\"left card 1.5\".lean=10 deg"}).boards[1].lean.si, degrees(10).si);
  EXPECT_EQ(edited({"board.'left card 1.5'.upright=true"}).boards[1].upright, true);
}

TEST(Edit, TheNameMayBeLeftOutWhereThereIsOne) {
  EXPECT_EQ(edited({"window.clock=10"}).windows[0].clock.hours, 10.0);
  EXPECT_EQ(edited({"window.clock=9:30"}).windows[0].clock.hours, 9.5);
  EXPECT_EQ(edited({"meter.kind=dome"}).meters[0].kind, "dome");
  EXPECT_EQ(edited({"meter.meter.kind=dome"}).meters[0].kind, "dome") << "the default name works too";
}

TEST(Edit, ReachesSectionsTheFileDoesNotHave) {
  const Description d = edited({"room.walls=0.7", "set.title=Moody loaf", "camera.view=45 deg"});
  EXPECT_EQ(d.room.walls, 0.7);
  EXPECT_EQ(d.set.title, "Moody loaf");
}

TEST(Edit, TheLastOfSeveralCountsAndEmptyTakesATextAway) {
  EXPECT_EQ(edited({"room.walls=0.7", "room.walls=0.2"}).room.walls, 0.2);
  EXPECT_EQ(edited({"window.curtain=sheer", "window.curtain="}).windows[0].curtain, "");
}

TEST(Edit, StepsIntoATableOfNames) {
  EXPECT_EQ(edited({"mesh.groups.crust=light oak"}).meshes[0].groups.at("crust"), "light oak");
  EXPECT_EQ(edited({"mesh.loaf.groups.crumb=light oak"}).meshes[0].groups.size(), 2u);
  EXPECT_EQ(edited({"mesh.groups={ a = \"light oak\" }"}).meshes[0].groups.size(), 1u);
}

TEST(Edit, FaultsNameTheEditAndListWhatThereIs) {
  const auto fault = [](const std::string& edit) { return faults_of(kScene, {edit}); };
  EXPECT_THAT(fault("board.fil.lean=1"),
              ElementsAre("error: there is no board \"fil\" in the scene; did you mean fill?"));
  EXPECT_THAT(
      fault("board.zebra stripes.lean=1"),
      ElementsAre(
          "error: there is no board \"zebra stripes\" in the scene; there is: fill or left card 1.5"));
  EXPECT_THAT(fault("board.lean=1"),
              ElementsAre("error: there are 2 things called board; say which: fill or left card 1.5"));
  EXPECT_THAT(fault("diffuser.lean=1"),
              ElementsAre("error: there is no diffuser in the scene; write [[diffuser]] in the file first"));
  EXPECT_THAT(fault("bord.fill.lean=1"),
              ElementsAre("error: 'bord' is not a section of a scene; did you mean board?"));
  EXPECT_THAT(fault("window.clok=1"),
              ElementsAre("error: window: 'clok' is not a key of a window; did you mean clock?"));
  for (const char* broken :
       {"", "room", "room.walls", "=1", "walls=1", "room..walls=1", "board.\"fill.lean=1", "room.=1"})
    EXPECT_THAT(fault(broken),
                ElementsAre("error: this is not section.key=value; for example board.fill.distance=30cm"))
        << broken;
}

TEST(Edit, ProblemsOfAnEditStandInTheEdit) {
  std::vector<Problem> problems;
  SourceTree tree = read_scene_text(kScene, "test.toml");
  apply_edit(tree, "room.walls=2", problems);
  describe(tree, problems);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(to_text(problems[0]), "--set room.walls=2: error: room: walls: 2 is too large; it may be 0 to 1");
}

RC_GTEST_PROP(EditProperty, AnyTextIsAppliedOrRefused, (const std::string& text)) {
  faults_of(kScene, {text, "board." + text, "board.fill.lean=" + text, "window." + text + "=1"});
}

}  // namespace
}  // namespace fillside
