#include "libsim/view/texture.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/space.h"

namespace fillside {
namespace {

// Lambert's cosine law on two facets: E = cos(theta -+ alpha), so that C = tan(alpha) tan(theta), 1 once the
// far facet is dark.
TEST(Texture, of_a_groove_is_the_product_of_two_tangents) {
  const double cases[][3] = {{5, 30, .050512},  {5, 60, .151535},  {5, 75, .326512},
                             {10, 45, .176327}, {10, 60, .305407}, {20, 60, .630415}};
  for (const auto& [facet, incidence, contrast] : cases) {
    const double along = std::sin(incidence * kDegree), onto = std::cos(incidence * kDegree);
    EXPECT_NEAR(groove_contrast(degrees(facet), along, onto).michelson, contrast, 1e-6);
  }
  EXPECT_NEAR(groove_contrast(degrees(20), std::sin(80 * kDegree), std::cos(80 * kDegree)).michelson, 1.0,
              1e-12);
}

// Any source wholly above both facets acts by its vector: a window 1.2 m x 1.2 m, sill 0.3 m over the point
// and 1 m away, of 1000 cd/m2 gives 456.0678 lx along and 321.3887 lx onto the table (Lambert's polygon
// formula).
TEST(Texture, of_a_groove_by_a_window) {
  EXPECT_NEAR(groove_contrast(degrees(10), 456.0678, 321.3887).michelson, 0.250218, 1e-6);
}

// A slope p gets (cos theta + p sin theta) / sqrt(1 + p^2); with s = 2 pi 0.5 / 8 the extremes are the
// steepest places while tan(theta) >= s: C = s tan(theta). From straight above they are the level and the
// steepest ones.
TEST(Texture, of_waves) {
  const double slope = 2.0 * kPi * 0.5 / 8.0;
  for (const auto& [incidence, contrast] :
       {std::pair{30.0, 0.226725}, {45.0, 0.392699}, {60.0, 0.680175}, {0.0, 0.035839}})
    EXPECT_NEAR(wave_contrast(slope, std::sin(incidence * kDegree), std::cos(incidence * kDegree)).michelson,
                contrast, 1e-6)
        << incidence;
  // Gentle waves: the illuminance follows the slope, a sine, whose standard deviation is 1 / sqrt 2 of its
  // height.
  EXPECT_NEAR(wave_contrast(0.01, 1.0, 1.0).rms, 0.01 / std::sqrt(2.0), 1e-5);
}

TEST(Texture, without_light_has_no_contrast) { EXPECT_EQ(wave_contrast(0.3, 0.0, 0.0).michelson, 0.0); }

// Trigonometry: a post's shadow is its height / tan(elevation).
TEST(Texture, a_bumps_shadow_is_as_long_as_the_cotangent) {
  EXPECT_NEAR(shadow_per_height(degrees(45)), 1.0, 1e-12);
  EXPECT_NEAR(shadow_per_height(degrees(10)), 5.671282, 1e-6);
}

/// Light from the right leaves the wave before its crest, where the slope is the light's, and meets the flank
/// of the wave to the left: Newton's method on where the two cross.
double shadow_by_tangent(double slope, double rise) {
  const auto z = [&](double x) { return slope / (2 * kPi) * std::sin(2 * kPi * x); };
  const double leaves = std::acos(rise / slope) / (2 * kPi);
  double meets = -0.5;
  for (int i = 0; i < 100; ++i)
    meets -= (z(meets) - z(leaves) - rise * (meets - leaves)) / (slope * std::cos(2 * kPi * meets) - rise);
  return leaves - meets;
}

TEST(Texture, waves_shade_themselves_from_their_steepest_slope_on) {
  const double slope = 2.0 * kPi * 0.5 / 8.0;
  EXPECT_EQ(shadowed_share(slope, radians(std::atan(slope) + 1e-3)), 0.0);
  EXPECT_GT(shadowed_share(slope, radians(std::atan(slope) - 0.05)), 0.0);
  EXPECT_NEAR(in_degrees(radians(0.5 * kPi - std::atan(slope))), 68.5601, 1e-4);  // as incidence
  EXPECT_GT(shadowed_share(slope, degrees(0.2)), 0.9);
  double before = 1.0;
  for (double elevation = 1.0; elevation < 25.0; elevation += 1.0) {
    const double share = shadowed_share(slope, degrees(elevation));
    EXPECT_LE(share, before);
    before = share;
  }
}

TEST(Texture, the_shadow_begins_where_the_light_grazes_and_ends_where_it_meets_the_flank) {
  const double slope = 0.4;
  for (const double elevation : {6.0, 10.0, 15.0}) {
    const double rise = std::tan(elevation * kDegree);
    EXPECT_NEAR(shadowed_share(slope, degrees(elevation)), shadow_by_tangent(slope, rise), 1e-3) << elevation;
  }
}

TEST(KeyElevation, is_that_of_the_windows_edges) {
  SceneParts parts;
  Opening opening;
  opening.rectangle = {{0, -1, 0.9}, {0.6, 0, 0}, {0, 0, 0.6}};
  parts.outside = even_outside(candela_per_m2(1000));
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  const KeyElevation key = key_elevation(scene, find_key(scene, "", {0, 0, 0.05}), {0, 0, 0});
  EXPECT_NEAR(std::tan(key.low.si), 0.3, 1e-9);
  EXPECT_NEAR(std::tan(key.middle.si), 0.9, 1e-9);
  EXPECT_NEAR(std::tan(key.high.si), 1.5, 1e-9);
}

TEST(KeyElevation, of_a_masked_window_is_that_of_its_clear_part) {
  SceneParts parts;
  Opening opening;
  opening.rectangle = {{0, -1, 0.9}, {0.6, 0, 0}, {0, 0, 0.6}};
  opening.cover.bottom = -0.5;  // a quarter of 1.2 m, at either end
  opening.cover.top = 0.5;
  parts.outside = even_outside(candela_per_m2(1000));
  parts.add_emitter("window", opening);
  const Scene scene(std::move(parts));
  const KeyElevation key = key_elevation(scene, find_key(scene, "", {0, 0, 0.05}), {0, 0, 0});
  EXPECT_NEAR(std::tan(key.low.si), 0.6, 1e-9);
  EXPECT_NEAR(std::tan(key.high.si), 1.2, 1e-9);
}

}  // namespace
}  // namespace fillside
