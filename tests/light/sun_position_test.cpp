#include "libsim/light/sun_position.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/light/horizon.h"
#include "tests/base/dice.h"
#include "tests/light/meeus.h"

namespace fillside {
namespace {

EarthPlace at(double north_deg, double east_deg, double height_m = 0.0) {
  return {north_deg * kDegree, east_deg * kDegree, height_m};
}

struct Published {
  const char* what;
  double north_deg, east_deg;
  Instant instant;
  double azimuth_deg, altitude_deg;  ///< without air
  double azimuth_limit_deg = 0.02;
};

// London, Oslo, New York, Quito: IAU SOFA routines (ERFA 2.0.0, eraAtco13). Reykjavik, Berlin: pvlib's
// version of the algorithm of Reda and Andreas, NREL/TP-560-34302. Sydney, Ushuaia: PyEphem 4.1.4 (E. C.
// Downey's libastro, VSOP87). Quito has the sun so near the zenith that its bearing is hard to tell.
const Published kPublished[] = {
    {"London", 51.5074, -0.1278, {2024, 6, 20, 13, 0, 0.0, 60}, 178.9195, 61.9260},
    {"Oslo", 59.9139, 10.7522, {2024, 12, 21, 12, 0, 0.0, 60}, 176.4766, 6.5865},
    {"New York", 40.7128, -74.0060, {2024, 3, 20, 10, 0, 0.0, -240}, 122.2271, 32.0187},
    {"Quito", -0.1807, -78.4678, {2024, 9, 22, 12, 0, 0.0, -300}, 85.9646, 88.4151, 0.3},
    {"Reykjavik", 64.1466, -21.9426, {2021, 6, 21, 12}, 149.338090798, 46.702267686},
    {"Berlin, summer", 52.52, 13.405, {2021, 6, 21, 14, 0, 0.0, 120}, 203.723049, 59.285657},
    {"Berlin, winter", 52.52, 13.405, {2021, 12, 21, 10, 30, 0.0, 60}, 157.982911, 11.293283},
    {"Sydney, summer", -33.8688, 151.2093, {2024, 12, 21, 13, 0, 0.0, 660}, 351.498719, 79.464647},
    {"Sydney, winter", -33.8688, 151.2093, {2024, 6, 21, 15, 30, 0.0, 600}, 310.877208, 13.542879},
    {"Ushuaia", -54.8019, -68.3030, {2023, 2, 10, 17, 0, 0.0, -180}, 298.166717, 35.005959},
};

bool agrees(const Published& p, const SunPosition& sun) {
  const double bearing_off_deg = std::remainder(sun.azimuth_rad / kDegree - p.azimuth_deg, 360.0);
  return std::abs(sun.altitude_rad / kDegree - p.altitude_deg) < 0.02 &&
         std::abs(bearing_off_deg) < p.azimuth_limit_deg;
}

TEST(SunPosition, is_as_published_in_both_hemispheres) {
  for (const Published& p : kPublished) {
    const SunPosition sun = sun_position(at(p.north_deg, p.east_deg), p.instant);
    EXPECT_TRUE(agrees(p, sun)) << p.what << ": azimuth " << sun.azimuth_rad / kDegree << ", altitude "
                                << sun.altitude_rad / kDegree;
  }
}

// Planted mistakes: each must be caught by every city for which it makes a difference.
TEST(SunPosition, with_west_taken_for_east_does_not_pass) {
  for (const Published& p : kPublished)
    EXPECT_FALSE(agrees(p, sun_position(at(p.north_deg, -p.east_deg), p.instant))) << p.what;
}

TEST(SunPosition, with_south_taken_for_north_does_not_pass) {
  for (const Published& p : kPublished)
    EXPECT_FALSE(agrees(p, sun_position(at(-p.north_deg, p.east_deg), p.instant))) << p.what;
}

TEST(SunPosition, with_the_summer_hour_forgotten_or_put_twice_does_not_pass) {
  for (const Published& p : kPublished)
    for (const int wrong_min : {-60, 60}) {
      Instant instant = p.instant;
      instant.offset_min += wrong_min;
      EXPECT_FALSE(agrees(p, sun_position(at(p.north_deg, p.east_deg), instant))) << p.what;
    }
}

TEST(SunPosition, with_the_clock_one_minute_wrong_does_not_pass) {
  for (const Published& p : kPublished) {
    Instant instant = p.instant;
    instant.minute += 1;
    EXPECT_FALSE(agrees(p, sun_position(at(p.north_deg, p.east_deg), instant))) << p.what;
  }
}

TEST(SunPosition, counted_from_south_or_anticlockwise_does_not_pass) {
  for (const Published& p : kPublished) {
    SunPosition sun = sun_position(at(p.north_deg, p.east_deg), p.instant);
    const double azimuth = sun.azimuth_rad;
    sun.azimuth_rad = azimuth - kPi;
    EXPECT_FALSE(agrees(p, sun)) << p.what;
    sun.azimuth_rad = -azimuth;
    EXPECT_FALSE(agrees(p, sun)) << p.what;
  }
}

// Reda and Andreas, NREL/TP-560-34302, rev. 2008, table A5.1; altitude without air from pvlib's tests of the
// same.
TEST(SunPosition, is_that_of_the_worked_example_of_nrel) {
  const SunPosition sun =
      sun_position(at(39.742476, -105.1786, 1830.14), Instant{2003, 10, 17, 12, 30, 30.0, -7 * 60});
  EXPECT_NEAR(sun.azimuth_rad / kDegree, 194.34024, 1e-4);
  EXPECT_NEAR(sun.altitude_rad / kDegree, 39.872046, 1e-4);
  EXPECT_NEAR(sun.declination_rad / kDegree, -9.31434, 1e-4);
  EXPECT_NEAR(sun.hour_angle_rad / kDegree, 11.105900, 2e-4);
  EXPECT_NEAR(sun.distance_au, 0.9965422974, 2e-6);
  // NREL takes the mean sun in dynamical time, a minute ahead of the clock: 0.003 min.
  EXPECT_NEAR(sun.equation_of_time_min, 14.641503, 0.005);
  EXPECT_NEAR(sun.apparent_altitude_rad / kDegree, 39.888378, 0.005);  // at 820 hPa; here 1010
}

// Astronomical Algorithms, example 25.a, 1992-10-13 0h TD, and its high-precision truth 13h13m30.749s,
// -7d47m01.74s.
TEST(MeeusSun, is_that_of_the_books_example) {
  const double date = julian_date_ut({1992, 10, 13, 0});
  const tests::MeeusSun sun = tests::meeus_sun(date);
  EXPECT_NEAR((date - 2451545.0) / 36525.0, -0.072183436, 1e-9);
  EXPECT_NEAR(std::fmod(sun.mean_longitude_deg, 360.0) + 360.0, 201.80719, 3e-5);
  EXPECT_NEAR(std::fmod(sun.mean_anomaly_deg, 360.0) + 360.0, 278.99396, 3e-5);
  EXPECT_NEAR(sun.eccentricity, 0.01671166, 1e-7);
  EXPECT_NEAR(sun.centre_deg, -1.89732, 1e-5);
  EXPECT_NEAR(sun.distance_au, 0.99766, 5e-6);
  EXPECT_NEAR(std::fmod(sun.apparent_longitude_deg, 360.0) + 360.0, 199.90894, 3e-5);
  EXPECT_NEAR(sun.right_ascension_deg, -161.61919, 3e-5);
  EXPECT_NEAR(sun.declination_deg, -7.78507, 3e-5);
  const SunPosition ours = sun_position(at(0, 0), date - 59.0 / 86400.0);
  EXPECT_NEAR(ours.declination_rad / kDegree, -(7.0 + 47.0 / 60.0 + 1.74 / 3600.0), 1e-5);
}

TEST(SunPosition, agrees_with_meeus_at_ten_thousand_places_and_times) {
  tests::Dice dice(25);
  double worst_altitude_deg = 0.0, worst_bearing_deg = 0.0;
  for (int i = 0; i < 10000; ++i) {
    const EarthPlace place{std::asin(2.0 * dice.throw_one() - 1.0), (2.0 * dice.throw_one() - 1.0) * kPi};
    const double date = 2433282.5 + 36525.0 * dice.throw_one();  // 1950 to 2050
    const SunPosition sun = sun_position(place, date);
    const auto meeus = tests::meeus_horizon(date, place.latitude_rad, place.longitude_rad);
    worst_altitude_deg =
        std::max(worst_altitude_deg, std::abs(sun.altitude_rad / kDegree - meeus.altitude_deg));
    if (std::abs(meeus.altitude_deg) > 89.0) continue;
    // A bearing counts as what it moves the sun by on the sky: near the zenith that is little.
    worst_bearing_deg = std::max(
        worst_bearing_deg, std::abs(std::remainder(sun.azimuth_rad / kDegree - meeus.azimuth_deg, 360.0)) *
                               std::cos(sun.altitude_rad));
  }
  EXPECT_LT(worst_altitude_deg, 0.02);
  EXPECT_LT(worst_bearing_deg, 0.02);
  EXPECT_GT(worst_altitude_deg, 1e-6);  // two opinions, not one
  RecordProperty("worst_altitude_deg", std::to_string(worst_altitude_deg));
  RecordProperty("worst_bearing_deg", std::to_string(worst_bearing_deg));
}

TEST(SunPosition, of_years_past_the_table_of_leap_seconds_is_no_error) {
  for (const int year : {1950, 1955, 2035, 2100}) {
    const double date = julian_date_ut({year, 5, 1, 10});
    const SunPosition sun = sun_position(at(50, 8), date);
    const auto meeus = tests::meeus_horizon(date, 50 * kDegree, 8 * kDegree);
    EXPECT_NEAR(sun.altitude_rad / kDegree, meeus.altitude_deg, 0.02) << year;
    EXPECT_NEAR(sun.azimuth_rad / kDegree, meeus.azimuth_deg, 0.03) << year;
  }
}

// Meeus, Astronomical Algorithms, chapter 28, example 28.a: 1992-10-13 0h TD, +13 min 42.6 s.
TEST(EquationOfTime, is_that_of_the_books_example) {
  const double date = julian_date_ut({1992, 10, 13, 0}) - 59.0 / 86400.0;
  EXPECT_NEAR(sun_position(at(0, 0), date).equation_of_time_min, 13.0 + 42.6 / 60.0, 0.005);
}

// Figures of libnova 0.16's refraction at 1010 hPa and 10 degrees C; at the horizon 34' is the almanacs'
// custom, and Saemundsson's formula gives 29' from the true altitude 0 (Meeus, chapter 16).
TEST(Refraction, is_as_published) {
  for (const auto& [altitude_deg, raised_deg] :
       {std::pair{6.5865, 0.131}, {17.13, 0.053}, {24.63, 0.0357}, {61.93, 0.0086}})
    EXPECT_NEAR(refraction_rad(altitude_deg * kDegree) / kDegree, raised_deg, 0.005) << altitude_deg;
  EXPECT_NEAR(refraction_rad(0.0) / kDegree * 60.0, 28.98, 0.02);
  EXPECT_NEAR(refraction_rad(-34.0 / 60.0 * kDegree) / kDegree * 60.0, 34.0, 0.6);
}

TEST(Refraction, leaves_the_zenith_alone_and_goes_on_evenly_below_the_horizon) {
  EXPECT_EQ(refraction_rad(90 * kDegree), 0.0);
  EXPECT_NEAR(refraction_rad(-90 * kDegree), 0.0, 1e-12);
  for (double altitude_deg = -89.9; altitude_deg < 89.9; altitude_deg += 0.1) {
    const double here = refraction_rad(altitude_deg * kDegree),
                 above = refraction_rad((altitude_deg + 0.1) * kDegree);
    EXPECT_GE(here, 0.0);
    EXPECT_LT(std::abs(here - above), 0.025 * kDegree) << altitude_deg;
    EXPECT_GT(above - here, -0.1 * kDegree) << altitude_deg;  // what stands higher looks higher
  }
}

// Astronomical Almanac: 8.794" at the horizon at one astronomical unit.
TEST(SunPosition, has_the_suns_parallax_in_it) {
  const EarthPlace place = at(50, 8);
  const SunPosition sun = sun_position(place, Instant{2024, 6, 20, 4});
  const double from_the_middle =
      std::asin(std::sin(place.latitude_rad) * std::sin(sun.declination_rad) +
                std::cos(place.latitude_rad) * std::cos(sun.declination_rad) * std::cos(sun.hour_angle_rad));
  EXPECT_NEAR((from_the_middle - sun.altitude_rad) / kDegree * 3600.0,
              8.794 / sun.distance_au * std::cos(sun.altitude_rad), 0.02);
}

}  // namespace
}  // namespace fillside
