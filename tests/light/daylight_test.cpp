#include "libsim/light/daylight.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/availability.h"
#include "libsim/light/chromaticity.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

constexpr Instant kMay{2024, 5, 10, 15, 0, 0.0, 120};
const EarthPlace kBerlin{52.52 * kDegree, 13.405 * kDegree};

Daylight in_may(int sky_type, Compass compass = {}, const DaylightFigures& figures = {}) {
  return daylight_by(sun_position(kBerlin, kMay), day_of_year(kMay), sky_type, compass, figures).value();
}

// IES, "Recommended practice for the calculation of daylight availability", 1984: sky and sun are added on
// the level.
TEST(Daylight, gives_level_ground_the_usual_light_of_sky_and_sun) {
  const Angle altitude = radians(sun_position(kBerlin, kMay).apparent_altitude_rad);
  const double sky_lx = diffuse_horizontal_illuminance(Weather::clear, altitude)->si;
  const double sun_lx = direct_normal_illuminance(Weather::clear, altitude, day_of_year(kMay))->si;
  EXPECT_NEAR(luminance(level_illuminance(in_may(kClearSky))), sky_lx + sun_lx * std::sin(altitude.si), 0.1);
}

// Exposure tables on film boxes and in handbooks: full sun EV 15, cloudy bright 13, heavy overcast 12 at ISO
// 100, to one EV (common practice). Incident light by ISO 2720 with C = 250: 2^EV = E S / C.
TEST(Daylight, exposes_as_the_usual_tables_say) {
  const auto ev100 = [](double lx) { return std::log2(lx * 100.0 / 250.0); };
  const Angle high = radians(55.0 * kDegree), low = radians(20.0 * kDegree);
  const double sun_lx = direct_normal_illuminance(Weather::clear, high, 172)->si * std::sin(high.si);
  EXPECT_NEAR(ev100(diffuse_horizontal_illuminance(Weather::clear, high)->si + sun_lx), 15.0, 1.0);
  EXPECT_NEAR(ev100(diffuse_horizontal_illuminance(Weather::overcast, high)->si), 13.0, 1.0);
  EXPECT_NEAR(ev100(diffuse_horizontal_illuminance(Weather::overcast, low)->si), 12.0, 1.0);
}

// Added up over the sky by the midpoint rule, for the channels as well.
TEST(Daylight, has_a_ground_that_sends_back_what_the_sky_and_sun_give_it) {
  DaylightFigures figures;
  figures.ground_reflectance = Rgb(0.1, 0.2, 0.3);
  const Daylight light = in_may(kClearSky, {}, figures);
  const double sky_sr = tests::over_sphere(
      0.0, [&](const Direction& d) { return relative_luminance(light.sky, d) * std::max(0.0, d.z()); });
  const Rgb level = light.zenith_radiance * sky_sr + radiance_of(*light.sun) * kPi *
                                                         std::pow(std::sin(light.sun->half_angle_rad), 2) *
                                                         light.sun->to_sun.z();
  EXPECT_LT((light.ground_radiance * kPi / (figures.ground_reflectance * level) - 1.0).abs().maxCoeff(),
            1e-4);
}

TEST(Daylight, is_what_was_measured_where_something_was) {
  const DaylightFigures figures{lux(7000), lux(30000), 9000.0, 3500.0, grey(0.0)};
  const Daylight light = in_may(kClearSky, {}, figures);
  const double level_sr = horizontal_illuminance_per_zenith_luminance(light.sky);
  EXPECT_NEAR(luminance(light.zenith_radiance) * level_sr, 7000.0, 1e-6);
  EXPECT_EQ(light.sun->normal_illuminance_lx, 30000.0);
  EXPECT_NEAR(correlated_temperature_K(chromaticity_of(light.zenith_radiance)), 9000.0, 60.0);
  EXPECT_NEAR(correlated_temperature_K(chromaticity_of(light.sun->colour)), 3500.0, 20.0);
  EXPECT_EQ(light.ground_radiance.maxCoeff(), 0.0);
}

// Full width of the sun in early January and in early July: see SunDisc.is_about_half_a_degree_across.
TEST(Daylight, has_a_sun_as_wide_as_the_day_of_the_year_makes_it) {
  const auto width_min = [](const Instant& noon) {
    const auto light = daylight_by(sun_position(kBerlin, noon), day_of_year(noon), kClearSky);
    return 2.0 * light->sun->half_angle_rad / kDegree * 60.0;
  };
  EXPECT_NEAR(width_min({2024, 1, 3, 12, 0, 0.0, 60}), 32.0 + 32.0 / 60.0, 0.02);
  EXPECT_NEAR(width_min({2024, 7, 5, 12, 0, 0.0, 60}), 31.0 + 28.0 / 60.0, 0.02);
}

TEST(Daylight, shows_no_sun_under_overcast_and_hidden_sun_unless_asked) {
  for (const int type : {1, 5, 9, 16}) EXPECT_FALSE(in_may(type).sun) << type;
  for (const int type : {8, 10, 12, 15}) EXPECT_TRUE(in_may(type).sun) << type;
  EXPECT_FALSE(in_may(kClearSky, {}, {{}, lux(0), {}, {}, grey(0.2)}).sun);
  EXPECT_TRUE(in_may(kTraditionalOvercast, {}, {{}, lux(500), {}, {}, grey(0.2)}).sun);
}

TEST(Daylight, ends_with_the_day) {
  const Instant night{2024, 5, 10, 23, 30, 0.0, 120};
  EXPECT_FALSE(daylight_by(sun_position(kBerlin, night), day_of_year(night), kClearSky));
}

// A set that looks along the bearing of the sun has the sun before it.
TEST(Daylight, lies_on_the_compass_as_the_set_does) {
  const double bearing = sun_position(kBerlin, kMay).azimuth_rad;
  const Daylight light = in_may(kClearSky, {bearing});
  EXPECT_NEAR(light.sky.to_sun.x(), 0.0, 1e-12);
  EXPECT_GT(light.sky.to_sun.y(), 0.0);
  EXPECT_GT(front_illuminance(light, {0, 1, 0})[1], 2.0 * front_illuminance(light, {0, -1, 0})[1]);
  EXPECT_NEAR(front_illuminance(light, {0, -1, 0})[1], front_illuminance_without_sun(light, {0, -1, 0})[1],
              1e-9);
}

}  // namespace
}  // namespace fillside
