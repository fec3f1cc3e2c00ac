// The refusals are in tests/bad_scenes; here is what must pass.
#include "libsim/scene/check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "libsim/scene/load.h"
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

TEST(Check, ACameraNearerThanItsLensFocusesIsWarnedOf) {
  const std::string camera = "[[window]]\n[camera]\ndistance = \"50 cm\"\n";
  EXPECT_THAT(checked(camera + "closest_focus = \"45 cm\"\n"), IsEmpty());
  EXPECT_THAT(checked(camera + "closest_focus = \"90 cm\"\n"),
              ElementsAre(HasSubstr("it stands 50 cm away and focuses no nearer than 90 cm")));
}

TEST(Check, AnOverheadCameraThatLeansIsWarnedOf) {
  const std::string camera = "[[window]]\n[camera]\nview = \"overhead\"\nelevation = ";
  EXPECT_THAT(checked(camera + "\"90 deg\"\n"), IsEmpty());
  EXPECT_THAT(checked(camera + "\"80 deg\"\n"), ElementsAre(HasSubstr("10 deg off straight down")));
}

}  // namespace
}  // namespace fillside
