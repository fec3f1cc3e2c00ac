// Usual colours are starting points from memory: what is tested is that they lie where they must.
#include "libsim/light/daylight_colour.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

TEST(UsualSkyColour, is_neutral_when_overcast_and_blue_when_clear) {
  EXPECT_LT((usual_sky_colour(16) - 1.0).abs().maxCoeff(), 0.02);
  EXPECT_GT(usual_sky_colour(12)[2], 1.3 * usual_sky_colour(12)[0]);
  for (int type = 1; type <= 16; ++type) {
    EXPECT_GE(usual_sky_temperature_K(type), 6500.0) << type;
    EXPECT_LE(usual_sky_temperature_K(type), 20000.0) << type;
    EXPECT_NEAR(luminance(usual_sky_colour(type)), 1.0, 1e-12) << type;
  }
}

TEST(UsualSunColour, is_warm_when_low_and_whitens_as_it_rises) {
  EXPECT_EQ(usual_sun_temperature_K(degrees(1.0)), 3000.0);
  EXPECT_EQ(usual_sun_temperature_K(degrees(10.0)), 3500.0);
  EXPECT_EQ(usual_sun_temperature_K(degrees(85.0)), 5500.0);
  for (double altitude_deg = 0.0; altitude_deg < 90.0; altitude_deg += 1.0) {
    EXPECT_LE(usual_sun_temperature_K(degrees(altitude_deg)),
              usual_sun_temperature_K(degrees(altitude_deg + 1.0)));
    EXPECT_GT(usual_sun_colour(degrees(altitude_deg))[0], usual_sun_colour(degrees(altitude_deg))[2]);
  }
}

}  // namespace
}  // namespace fillside
