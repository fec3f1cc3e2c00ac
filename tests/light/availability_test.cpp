// IES Calculation Procedures Committee, "Recommended practice for the calculation of daylight availability",
// J. IES 13(4), 1984 (constants of the sky from memory).
#include "libsim/light/availability.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/space.h"
#include "libsim/light/general_sky.h"
#include "libsim/light/sun_position.h"

namespace fillside {
namespace {

// The air mass of this table is 1 / sin h.
TEST(DirectSun, falls_off_with_the_air_as_the_ies_has_it) {
  const double clear_klx[][2] = {{5, 11.457},  {10, 38.045},  {20, 69.001}, {30, 83.773},
                                 {45, 94.740}, {60, 100.046}, {90, 103.349}};
  for (const auto& [altitude_deg, klx] : clear_klx)
    EXPECT_NEAR(direct_normal_at_air_mass(Weather::clear, 1.0 / std::sin(altitude_deg * kDegree)).si / 1000.0,
                klx, 6e-4);
  EXPECT_NEAR(direct_normal_at_air_mass(Weather::partly_cloudy, 2.0).si, 25742.0, 0.6);
  EXPECT_NEAR(direct_normal_at_air_mass(Weather::partly_cloudy, 1.0 / std::sin(60 * kDegree)).si, 50620.0,
              0.6);
}

// Kasten and Young, Applied Optics 28(22), 1989; the first three as in pvlib's tests of the formula.
TEST(AirMass, is_kastens_and_youngs) {
  const double by_zenith[][2] = {
      {20, 1.0636999871}, {40, 1.3042235409}, {70, 2.9031466488}, {85, 10.305791}, {88, 19.433245}};
  for (const auto& [zenith_deg, air_mass] : by_zenith)
    EXPECT_NEAR(relative_air_mass(degrees(90.0 - zenith_deg)) / air_mass, 1.0, 1e-7) << zenith_deg;
  EXPECT_NEAR(relative_air_mass(degrees(0.0)), 37.92, 0.01);
}

TEST(DirectSun, is_refused_where_there_is_none) {
  EXPECT_FALSE(direct_normal_illuminance(Weather::clear, degrees(0.0), 100));
  EXPECT_FALSE(direct_normal_illuminance(Weather::clear, degrees(-3.0), 100));
  EXPECT_FALSE(direct_normal_illuminance(Weather::clear, degrees(91.0), 100));
  EXPECT_FALSE(direct_normal_illuminance(Weather::overcast, degrees(40.0), 100));
  EXPECT_FALSE(direct_normal_illuminance(Weather::clear, radians(std::nan("")), 100));
  ASSERT_TRUE(direct_normal_illuminance(Weather::clear, degrees(30.0), 93));
  EXPECT_NEAR(direct_normal_illuminance(Weather::clear, degrees(30.0), 93)->si, 83773.0, 150.0);
}

TEST(DistanceFactor, follows_the_distance_of_the_earth) {
  EXPECT_NEAR(distance_factor(2), 1.034, 1e-12);
  for (int month = 1; month <= 12; ++month) {
    const Instant instant{2023, month, 15, 12};
    const double au = sun_position({}, instant).distance_au;
    EXPECT_NEAR(distance_factor(day_of_year(instant)) * au * au, 1.0, 0.002) << month;
  }
}

TEST(DiffuseSky, gives_level_ground_what_the_ies_has) {
  const auto klx = [](Weather weather, double altitude_deg) {
    return diffuse_horizontal_illuminance(weather, degrees(altitude_deg))->si / 1000.0;
  };
  EXPECT_NEAR(klx(Weather::clear, 30), 11.760, 6e-4);
  EXPECT_NEAR(klx(Weather::partly_cloudy, 30), 22.800, 6e-4);
  EXPECT_NEAR(klx(Weather::overcast, 30), 10.800, 6e-4);
  EXPECT_NEAR(klx(Weather::clear, 60), 15.224, 6e-4);
  EXPECT_NEAR(klx(Weather::partly_cloudy, 60), 39.271, 6e-4);
  EXPECT_NEAR(klx(Weather::overcast, 60), 18.487, 6e-4);
  for (const Weather weather : {Weather::clear, Weather::partly_cloudy, Weather::overcast})
    for (const double altitude_deg : {-10.0, 0.0, 90.5})
      EXPECT_FALSE(diffuse_horizontal_illuminance(weather, degrees(altitude_deg)));
}

// Krochmann and Seidl, Lighting Research and Technology 6(3), 1974; 7 pi / 9 after Moon and Spencer, 1942.
TEST(ZenithLuminance, of_the_overcast_sky_fits_its_illuminance) {
  const double zenith = overcast_zenith_luminance(degrees(30.0)).si;
  EXPECT_NEAR(zenith, 4423.0, 0.5);
  const double level_lx =
      zenith * horizontal_illuminance_per_zenith_luminance(GeneralSky{kTraditionalOvercast});
  EXPECT_NEAR(level_lx, 300.5 + 21013.8 * 0.5, 0.5);
  EXPECT_NEAR(level_lx / diffuse_horizontal_illuminance(Weather::overcast, degrees(30.0))->si, 1.0, 0.002);
}

TEST(ZenithLuminance, of_the_clear_sky_is_dogniauxs_and_krochmanns) {
  for (const auto& [altitude_deg, expected] : {std::pair{20.0, 1098.5}, {40.0, 2036.4}, {60.0, 3799.1}})
    EXPECT_NEAR(clear_zenith_luminance(degrees(altitude_deg), 2.75).si, expected, 0.1);
}

// Orders of magnitude every table of lighting has: sunlight 32 to 100 klx, an overcast day 1 to 20.
TEST(Daylight, adds_up_to_what_people_measure) {
  const double noon_lx =
      direct_normal_illuminance(Weather::clear, degrees(60), 172)->si * std::sin(60 * kDegree) +
      diffuse_horizontal_illuminance(Weather::clear, degrees(60))->si;
  EXPECT_NEAR(noon_lx, 100000.0, 5000.0);
}

TEST(Weather, goes_with_the_kind_of_sky) {
  for (const int type : {1, 3, 5, 16}) EXPECT_EQ(weather_of_sky(type), Weather::overcast);
  for (const int type : {6, 8, 10}) EXPECT_EQ(weather_of_sky(type), Weather::partly_cloudy);
  for (const int type : {11, 12, 15}) EXPECT_EQ(weather_of_sky(type), Weather::clear);
}

}  // namespace
}  // namespace fillside
