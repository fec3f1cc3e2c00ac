// The refusals with their places and wording are in tests/bad_scenes; here are the warnings, and what must
// pass.
#include "libsim/scene/placed_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "libsim/scene/check.h"
#include "libsim/scene/item_overlap.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// What is found in a set with a window 80 cm to the left.
std::vector<std::string> found(const std::string& text) {
  std::vector<std::string> texts;
  for (const Problem& problem : check(described("[[window]]\n" + text))) texts.push_back(short_text(problem));
  return texts;
}

const std::string kBoard = "[[board]]\nsheet = \"A3\"\nclock = 3\n";

TEST(PlacedCheck, ABoardBeyondTheTablesEdgeHangsInTheAirUnlessItStandsOnTheFloorOrSaysItsHeight) {
  EXPECT_THAT(
      found(kBoard + "distance = \"61 cm\"\n"),
      ElementsAre("5:1: warning: board: it stands beyond the table's edge and hangs in the air; write stands "
                  "= \"floor\", move it nearer, or make the table larger"));
  EXPECT_THAT(found(kBoard + "distance = \"60 cm\"\n"), IsEmpty());
  EXPECT_THAT(found(kBoard + "distance = \"61 cm\"\nstands = \"floor\"\n"), IsEmpty());
  EXPECT_THAT(found(kBoard + "distance = \"61 cm\"\nz = \"10 cm\"\n"), IsEmpty());
  EXPECT_THAT(found(kBoard + "distance = \"61 cm\"\n[table]\nwidth = \"1.3 m\"\n"), IsEmpty());
}

TEST(PlacedCheck, FoodBeyondTheEdgeOrUnderTheTableIsAWarning) {
  EXPECT_THAT(found("[[food]]\nkind = \"egg\"\nx = \"70 cm\"\n"),
              ElementsAre(HasSubstr("4:1: warning: food \"egg\": it stands beyond")));
  EXPECT_THAT(
      found("[[food]]\nkind = \"egg\"\nz = \"-50 cm\"\n"),
      ElementsAre(
          "4:1: warning: food \"egg\": it lies under the table, 44.3 cm below its top; leave z out to "
          "put it on the table"));
}

TEST(PlacedCheck, WhatIsNotUsedIsNotThere) {
  EXPECT_THAT(found(kBoard + "distance = \"20 m\"\nused = false\n"), IsEmpty());
  EXPECT_THAT(found("[[food]]\nkind = \"loaf\"\nz = \"-2 cm\"\nused = false\n"), IsEmpty());
  EXPECT_THAT(found("[table]\nused = false\n[[food]]\nkind = \"loaf\"\nz = \"-2 cm\"\n"), IsEmpty());
}

TEST(PlacedCheck, ABoardMayTouchTheFoodTheWallAndTheCeiling) {
  EXPECT_THAT(found("[[food]]\nkind = \"tart\"\n" + kBoard + "distance = \"12.1 cm\"\n"), IsEmpty());
  // Its back lies in the wall at 3.2 m.
  EXPECT_THAT(found(kBoard + "distance = \"319.5 cm\"\nstands = \"floor\"\n"), IsEmpty());
  EXPECT_THAT(found("[[board]]\nwidth = \"30 cm\"\nheight = \"1.75 m\"\nclock = 3\ndistance = \"30 cm\"\n"),
              IsEmpty());
}

TEST(PlacedCheck, ABoardThatLeansBackStandsOnTheTableAndOnTheFloor) {
  EXPECT_THAT(found(kBoard + "distance = \"30 cm\"\nlean = \"-40 deg\"\n"), IsEmpty());
  EXPECT_THAT(found(kBoard + "distance = \"1 m\"\nlean = \"-40 deg\"\nstands = \"floor\"\n"), IsEmpty());
}

TEST(PlacedCheck, ABoardMayLieFlat) {
  EXPECT_THAT(found(kBoard + "distance = \"58 cm\"\nlean = \"90 deg\"\nz = \"1 cm\"\n"), IsEmpty());
}

TEST(PlacedCheck, ATallBoardOnTheFloorIsRefusedOnlyWhereTheTableIs) {
  const std::string tall = "[[board]]\nwidth = \"40 cm\"\nheight = \"1 m\"\nstands = \"floor\"\nclock = 3\n";
  EXPECT_THAT(found(tall + "distance = \"50 cm\"\n"),
              ElementsAre(HasSubstr("move it 10 cm farther from the dish")));
  EXPECT_THAT(found(tall + "distance = \"61 cm\"\n"), IsEmpty());
}

TEST(PlacedCheck, ABoardWhollyInsideFoodGoesThroughIt) {
  const std::string cake = "[[food]]\nkind = \"layer cake\"\nwidth = \"1 m\"\n";
  EXPECT_THAT(found(cake + "[[board]]\nwidth = \"5 cm\"\nheight = \"2 cm\"\nz = \"5 cm\"\n"),
              ElementsAre(HasSubstr("it goes through the food \"layer cake\"")));
}

TEST(PlacedCheck, TheMoveThatARemedyNamesIsEnough) {
  const std::string set =
      "[[food]]\nkind = \"loaf\"\nturn = \"30 deg\"\n[[board]]\nsheet = \"A4\"\nclock = 4\n";
  EXPECT_THAT(found(set + "distance = \"10 cm\"\n"),
              ElementsAre(HasSubstr("move it 5 cm farther from the dish")));
  EXPECT_THAT(found(set + "distance = \"15 cm\"\n"), IsEmpty());
}

TEST(PlacedCheck, FoodMoreThanACentimetreDeepInOtherFoodIsAWarning) {
  const std::string two =
      "[[food]]\nkind = \"ball\"\nname = \"one\"\n[[food]]\nkind = \"ball\"\nname = \"two\"\nclock = 1\n";
  EXPECT_THAT(
      found(two + "distance = \"5.8 cm\"\n"),
      ElementsAre(
          "9:1: warning: food \"two\": it stands 1.2 cm deep in \"one\"; move one of them away, or put one "
          "on the other with on = ..."));
  EXPECT_THAT(found(two + "distance = \"6.1 cm\"\n"), IsEmpty());
}

TEST(PlacedCheck, WhatStandsOnAPlateMayBeInItWhicheverComesFirstInTheFile) {
  const std::string plate = "[[prop]]\nkind = \"plate\"\n", tart = "[[food]]\nkind = \"tart\"\n";
  EXPECT_THAT(found(plate + tart), ElementsAre(HasSubstr("deep in \"plate\"")));
  EXPECT_THAT(found(plate + tart + "on = \"plate\"\n"), IsEmpty());
  EXPECT_THAT(found(tart + "on = \"plate\"\n" + plate), IsEmpty());
}

TEST(PlacedCheck, AMeterReadsInThePlaceOfFoodThatIsTakenAwayAndInsideAnEmptyTumbler) {
  EXPECT_THAT(found("[[food]]\nkind = \"layer cake\"\n[[meter]]\n"), IsEmpty());
  EXPECT_THAT(found("[[food]]\nkind = \"layer cake\"\n[[meter]]\nsubject = \"there\"\nz = \"11 cm\"\n"),
              IsEmpty());
  EXPECT_THAT(found("[[prop]]\nkind = \"tumbler\"\nlevel = 0\n[[meter]]\nz = \"6 cm\"\n"), IsEmpty());
  EXPECT_THAT(found("[[prop]]\nkind = \"tumbler\"\nlevel = 0.9\n[[meter]]\nz = \"6 cm\"\n"),
              ElementsAre(HasSubstr("it is inside \"tumbler\"")));
}

TEST(PlacedCheck, ATableAsWideAsItsWindowIsFarPasses) {
  EXPECT_THAT(found("[table]\nwidth = \"1.6 m\"\n"), IsEmpty());
  EXPECT_THAT(
      found("[table]\nwidth = \"1.62 m\"\n"),
      ElementsAre(
          "3:1: error: table: it goes 1 cm through the wall of the first window; move it at least 1 cm away "
          "from that wall"));
}

TEST(PlacedCheck, AnOrdinarySetPassesWithoutAWord) {
  EXPECT_THAT(
      found("[[food]]\nkind = \"dumpling\"\n" + kBoard + "distance = \"25 cm\"\nlean = \"15 deg\"\n" +
            "[[board]]\nname = \"v\"\nsheet = \"A3\"\nfold = \"90 deg\"\nclock = 11\ndistance = \"33 cm\"\n" +
            "[[diffuser]]\nwidth = \"60 cm\"\nheight = \"50 cm\"\nclock = 9\ndistance = \"40 cm\"\n"),
      IsEmpty());
}

TEST(ItemOverlap, OfTwoLoavesSideBySideIsByTheirBoxesAndNotByTheirCylinders) {
  const Description d = described("[[food]]\nkind = \"loaf\"\n[[food]]\nkind = \"loaf\"\ny = \"11 cm\"\n");
  const ItemPlacing placing(d);
  EXPECT_NEAR(overlap_m(hull_of(placing.items()[0]), hull_of(placing.items()[1])), 0.12 - 0.11, 1e-9);
}

TEST(ItemOverlap, OfTwoBallsIsByTheirCylindersAndNotByTheirBoxes) {
  const Description d =
      described("[[food]]\nkind = \"ball\"\n[[food]]\nkind = \"ball\"\nx = \"4 cm\"\ny = \"4 cm\"\n");
  const ItemPlacing placing(d);
  EXPECT_NEAR(overlap_m(hull_of(placing.items()[0]), hull_of(placing.items()[1])),
              0.07 - 0.04 * std::sqrt(2.0), 1e-9);
}

TEST(ItemPlacing, PutsALoadOnACarrierThatStandsLaterInTheFile) {
  const Description d = described(
      "[[food]]\nkind = \"egg\"\non = \"lower\"\n[[prop]]\nkind = \"box\"\nname = \"upper\"\non = \"lower\"\n"
      "[[prop]]\nkind = \"box\"\nname = \"lower\"\nx = \"20 cm\"\n");
  const ItemPlacing placing(d);
  EXPECT_EQ(placing.items()[0].section->name, "egg");
  EXPECT_NEAR((placing.items()[0].placement.translation() - Point(0.2, 0, 0.1)).norm(), 0.0, 1e-12);
  EXPECT_NEAR((placing.items()[1].placement.translation() - Point(0.2, 0, 0.1)).norm(), 0.0, 1e-12);
}

}  // namespace
}  // namespace fillside
