// Where the sun stands in the set. The compass: bearings clockwise from north, clock hours clockwise from the
// far side of the dish.
#include "libsim/scene/daylight.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/availability.h"
#include "tests/scene/reading.h"

namespace fillside {
namespace {

Description set_by_window(const std::string& clock, const std::string& facing, const std::string& daylight) {
  return described("[daylight]\n" + daylight + "\n[[window]]\nclock = " + clock +
                   (facing.empty() ? "" : "\nfacing = \"" + facing + "\"") + "\n");
}

std::string at(const std::string& latitude, const std::string& longitude, const std::string& time) {
  return "sky = \"clear\"\nlatitude = \"" + latitude + " deg\"\nlongitude = \"" + longitude +
         " deg\"\ntime = \"" + time + "\"";
}

double angle_between(const Direction& a, const Direction& b) {
  return std::acos(std::min(1.0, a.dot(b))) / kDegree;
}

/// Cosine of the sun's incidence on the window, from outside; negative from behind.
double onto_window(const std::string& facing, const std::string& daylight) {
  const Direction sun = sun_direction(set_by_window("12", facing, daylight)).value();
  return sun.z() > 0.0 ? sun.y() : -1.0;
}

bool any_hour_gets_sun(const std::string& facing, const std::string& latitude, const std::string& longitude,
                       const std::string& date) {
  for (int hour = 0; hour < 24; ++hour) {
    const std::string two = hour < 10 ? "0" + std::to_string(hour) : std::to_string(hour);
    if (onto_window(facing, at(latitude, longitude, date + "T" + two + ":00:00Z")) > 0.0) return true;
  }
  return false;
}

TEST(Bearing, IsACompassNameInAnyCaseOrAnAngle) {
  EXPECT_NEAR(parse_bearing("N")->si, 0.0, 1e-12);
  EXPECT_NEAR(parse_bearing("sw")->si, 225.0 * kDegree, 1e-12);
  EXPECT_NEAR(parse_bearing("NNE")->si, 22.5 * kDegree, 1e-12);
  EXPECT_NEAR(parse_bearing("210 deg")->si, 210.0 * kDegree, 1e-12);
  EXPECT_NEAR(parse_bearing("-90 deg")->si, 270.0 * kDegree, 1e-12);
  for (const char* text : {"", "NN", "left", "210", "210 m"}) EXPECT_FALSE(parse_bearing(text)) << text;
}

TEST(Compass, LiesAsTheFirstWindowLooks) {
  const auto of_y = [](const std::string& clock, const std::string& facing) {
    return compass_of(set_by_window(clock, facing, "sky = \"overcast\"")).value().azimuth_of_y_rad / kDegree;
  };
  EXPECT_NEAR(std::remainder(of_y("9", "W"), 360.0), 0.0, 1e-9);
  EXPECT_NEAR(of_y("12", "S"), 180.0, 1e-9);
  EXPECT_NEAR(of_y("3", "N"), 270.0, 1e-9);
  EXPECT_NEAR(of_y("9", "SW"), 315.0, 1e-9);
  EXPECT_FALSE(compass_of(set_by_window("9", "", "sky = \"overcast\"")));
}

// A window at 9 o'clock looks to the left of the picture; to the right of one who looks out of it is the far
// side.
TEST(SunByAngles, StandsToTheRightOfOneWhoLooksOut) {
  const Direction left =
      sun_direction(set_by_window("9", "", "sun_altitude = \"20 deg\"\nsun_off_window = \"0 deg\"")).value();
  EXPECT_NEAR(left.x(), -std::cos(20.0 * kDegree), 1e-12);
  EXPECT_NEAR(left.y(), 0.0, 1e-12);
  const Direction right =
      sun_direction(set_by_window("9", "", "sun_altitude = \"20 deg\"\nsun_off_window = \"25 deg\"")).value();
  EXPECT_NEAR(right.y(), std::sin(25.0 * kDegree) * std::cos(20.0 * kDegree), 1e-12);
  EXPECT_NEAR(right.z(), std::sin(20.0 * kDegree), 1e-12);
  const Direction behind_dish =
      sun_direction(set_by_window("12", "", "sun_altitude = \"20 deg\"\nsun_off_window = \"25 deg\""))
          .value();
  EXPECT_GT(behind_dish.x(), 0.0);
  EXPECT_GT(behind_dish.y(), 0.0);
}

// Reda and Andreas, "Solar position algorithm for solar radiation applications", NREL/TP-560-34302, table
// A5.1: zenith distance 50.11162 degrees with refraction, azimuth 194.34024.
TEST(SunByPlaceAndTime, StandsInTheSetWhereTheAlmanacHasIt) {
  const Direction sun =
      sun_direction(set_by_window("12", "S", at("39.742476", "-105.1786", "2003-10-17T12:30:30-07:00")))
          .value();
  EXPECT_NEAR(std::acos(sun.z()) / kDegree, 50.11162, 0.02);
  EXPECT_NEAR(std::atan2(sun.x(), sun.y()) / kDegree, 194.34024 - 180.0, 0.02);
}

TEST(SunByPlaceAndTime, TurnsWithTheRoomAndNotWithTheClock) {
  const std::string noon = at("39.742476", "-105.1786", "2003-10-17T12:30:30-07:00");
  const Direction far = sun_direction(set_by_window("12", "S", noon)).value();
  const Direction left = sun_direction(set_by_window("9", "S", noon)).value();
  EXPECT_NEAR(left.x(), -far.y(), 1e-12);  // a quarter turn to the left
  EXPECT_NEAR(left.y(), far.x(), 1e-12);
}

TEST(SunByPlaceAndTime, StandsInTheSouthAtNoonInTheNorthAndInTheNorthInTheSouth) {
  const std::string vienna = at("48.21", "16.37", "2026-06-21T11:00:00Z"),
                    hobart = at("-42.88", "147.33", "2026-06-21T02:00:00Z");
  EXPECT_GT(onto_window("S", vienna), 0.0);
  EXPECT_LT(onto_window("N", vienna), 0.0);
  EXPECT_GT(onto_window("N", hobart), 0.0);
  EXPECT_LT(onto_window("S", hobart), 0.0);
}

TEST(SunByPlaceAndTime, ReachesThroughASouthWestWindowOnAJulyAfternoonAndNotInTheMorning) {
  EXPECT_GT(onto_window("SW", at("43.6", "3.9", "2026-07-15T17:30:00+02:00")), 0.5);
  EXPECT_LT(onto_window("SW", at("43.6", "3.9", "2026-07-15T09:30:00+02:00")), 0.0);
}

// North of the tropic the winter sun rises south of east and sets south of west.
TEST(SunByPlaceAndTime, NeverMeetsANorthWindowInWinterAndDoesEarlyOnASummersDay) {
  EXPECT_FALSE(any_hour_gets_sun("N", "46.06", "14.51", "2026-12-21"));
  EXPECT_TRUE(any_hour_gets_sun("N", "46.06", "14.51", "2026-06-21"));
  EXPECT_TRUE(any_hour_gets_sun("S", "46.06", "14.51", "2026-12-21"));
  EXPECT_FALSE(any_hour_gets_sun("S", "-42.88", "147.33", "2026-06-21"));
}

// The Earth turns 15.04 degrees an hour; the sun's path at the solstice is a circle 23.44 degrees off the
// equator.
TEST(SunByPlaceAndTime, DependsOnTheOffsetOfTheClock) {
  const auto sun = [](const std::string& time) {
    return sun_direction(set_by_window("9", "S", at("48.9", "2.35", time))).value();
  };
  EXPECT_NEAR(angle_between(sun("2026-06-21T13:00:00+02:00"), sun("2026-06-21T13:00:00+01:00")),
              15.0 * std::cos(23.44 * kDegree), 0.1);
  EXPECT_NEAR(angle_between(sun("2026-06-21T13:00:00+02:00"), sun("2026-06-21T11:00:00Z")), 0.0, 1e-5);
}

double sun_lx(const std::string& daylight) {
  const auto sun = sun_of(outside_of(
      set_by_window("9", "", daylight + "\nsun_altitude = \"30 deg\"\nsun_off_window = \"10 deg\"")));
  return sun ? sun->disc.normal_illuminance_lx : 0.0;
}

TEST(Outside, HasASunWhereItsPlaceIsSaidUnlessTheSkyIsOvercastOrTheSetSaysNo) {
  EXPECT_NEAR(sun_lx("sky = \"clear\""), direct_normal_illuminance(Weather::clear, degrees(30), 80)->si,
              1e-6);
  EXPECT_EQ(sun_lx("sky = \"clear\"\nsun = false"), 0.0);
  EXPECT_EQ(sun_lx("sky = \"overcast\""), 0.0);
  EXPECT_GT(sun_lx("sky = \"overcast\"\nsun = true"), 0.0);
  EXPECT_EQ(sun_lx("sky = \"clear\"\nsun_illuminance = \"60 klx\""), 60000.0);
  EXPECT_EQ(sun_lx("sky = \"clear\"\nskyline = \"31 deg\""), 0.0);
  EXPECT_GT(sun_lx("sky = \"clear\"\nskyline = \"29 deg\""), 0.0);
}

TEST(Outside, KeepsTheLevelThatWasMeasured) {
  const Outside outside = outside_of(set_by_window(
      "9", "",
      "sky = \"clear\"\noutdoor = \"12 klx\"\nsun_altitude = \"20 deg\"\nsun_off_window = \"25 deg\""));
  const auto& sky = std::get<Sky>(outside.front().light);
  EXPECT_NEAR(luminance(sky.zenith_radiance) * horizontal_illuminance_per_zenith_luminance(sky.sky), 12000.0,
              1e-6);
}

// At dusk a reading still holds: the sky alone is counted, and it is said.
TEST(Outside, AfterSunsetIsTheSkyThatWasMeasuredAndSaysSo) {
  const Description dusk = set_by_window(
      "9", "",
      "sky = \"clear\"\noutdoor = \"50 lx\"\nsun_altitude = \"-3 deg\"\nsun_off_window = \"10 deg\"");
  std::vector<Problem> problems;
  check_daylight(dusk, problems);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].severity, Severity::warning);
  const Outside outside = outside_of(dusk);
  EXPECT_FALSE(sun_of(outside));
  const auto& sky = std::get<Sky>(outside.front().light);
  EXPECT_NEAR(luminance(sky.zenith_radiance) * horizontal_illuminance_per_zenith_luminance(sky.sky), 50.0,
              1e-6);
}

// A profile is taken with a compass; the set's axes follow the window.
TEST(Outside, TurnsASkylineProfileWithTheCompass) {
  const Outside outside = outside_of(set_by_window("9", "W",
                                                   "skyline_profile = { \"W\" = \"40 deg\", \"N\" = \"10 "
                                                   "deg\", \"E\" = \"10 deg\", \"S\" = \"10 deg\" }"));
  const Skyline& rim = std::get<Sky>(outside.front().light).skyline;
  EXPECT_NEAR(rim_altitude_rad(rim, {-1, 0, 0}), 40.0 * kDegree, 1e-9);
  EXPECT_NEAR(rim_altitude_rad(rim, {1, 0, 0}), 10.0 * kDegree, 1e-9);
  EXPECT_NEAR(rim_altitude_rad(rim, {0, 1, 0}), 10.0 * kDegree, 1e-9);
}

}  // namespace
}  // namespace fillside
