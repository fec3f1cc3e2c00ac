// The refusals are in tests/bad_scenes; here is what must pass, and the arithmetic of the walls.
#include "libsim/scene/check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/scene/load.h"
#include "libsim/scene/room_walls.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

std::vector<std::string> checked(const std::string& text) {
  std::vector<std::string> texts;
  for (const Problem& problem : check(described(text))) texts.push_back(short_text(problem));
  return texts;
}

TEST(Check, ShippedScenesPassWithoutAWarning) {
  for (const std::string& path : scenes_in("scenes")) {
    std::vector<Problem> warnings;
    EXPECT_NO_THROW(load_description(path, {}, warnings)) << path;
    EXPECT_THAT(warnings, IsEmpty()) << path;
  }
}

TEST(Check, AWindowExactlyAsLargeAsItsWallFits) {
  EXPECT_THAT(
      checked("[room]\nwidth = \"2 m\"\nheight = \"2.5 m\"\n[[window]]\nwidth = \"2 m\"\nheight = \"2.5 m\"\n"
              "sill = \"0 m\"\n"),
      IsEmpty());
}

TEST(Check, WindowsSideBySideAndOnOppositeWallsDoNotOverlap) {
  EXPECT_THAT(
      checked(
          "[[window]]\nalong = \"-60 cm\"\n[[window]]\nclock = 9\nalong = \"60 cm\"\n[[window]]\nclock = 3\n"
          "along = \"-60 cm\"\n"),
      IsEmpty());
}

TEST(Check, AWindowNotInUseIsWall) {
  EXPECT_THAT(
      checked("[[window]]\n[[window]]\nname = \"other\"\nclock = 9\nwidth = \"40 m\"\nused = false\n"),
      IsEmpty());
}

TEST(Check, ALaterWindowMaySayTheDistanceTheRoomGivesIt) {
  EXPECT_THAT(checked("[[window]]\n[[window]]\nclock = 12\ndistance = \"1.75 m\"\n"), IsEmpty());
}

TEST(Check, SharesLeftOutAreTheCatalogues) {
  const std::string diffuser = "[[window]]\n[[diffuser]]\nsheet = \"A2\"\nclock = 9\ndistance = \"30 cm\"\n";
  EXPECT_THAT(checked(diffuser), IsEmpty());
  EXPECT_THAT(checked(diffuser + "direct = 1\n"), ElementsAre(HasSubstr("more light leaves the cloth")));
  EXPECT_THAT(checked(diffuser + "direct = 0.5\ndiffuse = 0.3\nreflectance = 0.2\n"), IsEmpty());
}

TEST(Check, AColourTooStrongForItsReflectanceIsAWarning) {
  EXPECT_THAT(
      checked("[[window]]\n[table]\ncolour = \"#0000ff\"\nreflectance = 0.5\n"),
      ElementsAre("3:1: warning: table: colour: a colour this strong reflects 0.072 at most, not 0.5; take a "
                  "paler colour or a smaller reflectance"));
}

TEST(RoomWalls, AreWhereThePlanPutsThem) {
  // First window at 9 o'clock, 0.8 m to the left; 4 m deep, so the wall opposite is 3.2 m to the right.
  // Facing 9 o'clock one's right is 12 o'clock: along = 0.25 m moves the 3.5 m wall that far away from the
  // camera.
  const auto walls = walls_of(described("[room]\nalong = \"25 cm\"\n[[window]]\nclock = 9\n"));
  EXPECT_NEAR((walls[0].to_wall - Direction(-1, 0, 0)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((walls[1].to_wall - Direction(0, 1, 0)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((walls[2].to_wall - Direction(1, 0, 0)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((walls[3].to_wall - Direction(0, -1, 0)).norm(), 0.0, 1e-12);
  EXPECT_DOUBLE_EQ(walls[0].distance_m, 0.8);
  EXPECT_DOUBLE_EQ(walls[1].distance_m, 2.0);
  EXPECT_DOUBLE_EQ(walls[2].distance_m, 3.2);
  EXPECT_DOUBLE_EQ(walls[3].distance_m, 1.5);
  EXPECT_DOUBLE_EQ(walls[1].from_m, -0.8) << "facing 12 o'clock, the window's wall is to the left";
  EXPECT_DOUBLE_EQ(walls[2].from_m, -2.0) << "facing 3 o'clock, left is 12 o'clock";
  EXPECT_DOUBLE_EQ(walls[3].to_m, 0.8);
}

TEST(RoomWalls, EachWallIsAsWideAsTheRoom) {
  const auto walls = walls_of(described("[room]\nalong = \"-30 cm\"\n[[window]]\nclock = \"10:20\"\n"));
  EXPECT_NEAR(walls[0].to_m - walls[0].from_m, 3.5, 1e-12);
  EXPECT_NEAR(walls[1].to_m - walls[1].from_m, 4.0, 1e-12);
  EXPECT_NEAR(walls[2].to_m - walls[2].from_m, 3.5, 1e-12);
  EXPECT_NEAR(walls[3].to_m - walls[3].from_m, 4.0, 1e-12);
  for (std::size_t i = 0; i < 4; ++i) {
    // The right end of a wall is the left end of the next one, and both are the same corner.
    EXPECT_NEAR(walls[i].to_m, walls[(i + 1) % 4].distance_m, 1e-12);
    EXPECT_NEAR(-walls[(i + 1) % 4].from_m, walls[i].distance_m, 1e-12);
  }
}

TEST(RoomWalls, AWindowOpensInTheNearestWall) {
  const Description d = described("[[window]]\nclock = 10\n[[window]]\nclock = 12\n[[window]]\nclock = 5\n");
  const auto walls = walls_of(d);
  EXPECT_EQ(wall_of(walls, d.windows[0]), 0u);
  EXPECT_EQ(wall_of(walls, d.windows[1]), 1u);
  EXPECT_EQ(wall_of(walls, d.windows[2]), 2u);
}

}  // namespace
}  // namespace fillside
