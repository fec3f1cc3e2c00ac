#include "libsim/light/chromaticity.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/light/colour_matching.h"

namespace fillside {
namespace {

void expect_near(const std::optional<Chromaticity>& found, double x, double y, double limit) {
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->x, x, limit);
  EXPECT_NEAR(found->y, y, limit);
}

// CIE 15:2004, equations 3.2 to 3.4; figures as Little CMS 2.14 (cmsWhitePointFromTemp) gives them.
TEST(DaylightLocus, is_cies) {
  const double table[][3] = {{4000, .38234362, .38376626}, {5000, .34574100, .35866615},
                             {5500, .33250163, .34760768}, {6500, .31277888, .32918350},
                             {7500, .29909120, .31502511}, {10000, .27879960, .29196720},
                             {25000, .24985367, .25479946}};
  for (const auto& [t, x, y] : table) expect_near(daylight_locus(t), x, y, 1e-7);
}

TEST(DaylightLocus, ends_where_cie_ends_it) {
  for (const double t : {2856.0, 3000.0, 3999.0, 25001.0, std::nan("")}) EXPECT_FALSE(daylight_locus(t)) << t;
}

// CIE 15:2004, table T.3 (values from memory), at the temperatures that the change of c2 from 1.4380
// to 1.4388 gives.
TEST(DaylightLocus, passes_by_the_standard_illuminants) {
  expect_near(daylight_locus(5000 * 1.4388 / 1.4380), .34567, .35850, 2e-4);
  expect_near(daylight_locus(5500 * 1.4388 / 1.4380), .33242, .34743, 2e-4);
  expect_near(daylight_locus(6500 * 1.4388 / 1.4380), .31272, .32903, 2e-4);
  expect_near(daylight_locus(6500 * 1.4388 / 1.4380), .312720, .329125, 1e-6);
}

// Planck's law summed over the CIE 1931 functions at 1 nm, c2 = 0.01438777 m K.
TEST(PlanckianLocus, is_plancks_law_seen_by_the_1931_observer) {
  const double table[][3] = {{2000, .526677, .413297}, {2700, .459859, .410599}, {2856, .447535, .407428},
                             {3000, .436931, .404074}, {3200, .423360, .398952}, {4000, .380440, .376747},
                             {5000, .345101, .351608}, {6500, .313526, .323628}, {10000, .280634, .288288}};
  for (const auto& [t, x, y] : table) expect_near(planckian_locus(t), x, y, 1e-5);
  // CIE 15:2004, illuminant A: 2848 K with c2 = 1.435 is 2855.5 K with today's.
  expect_near(planckian_locus(2848.0 * 1.438776877 / 1.435), .44758, .40745, 1e-4);
  for (const double t : {999.0, 1.1e6, std::nan("")}) EXPECT_FALSE(planckian_locus(t)) << t;
}

// CIE 15:2004, table T.4: equal energy at 5 nm; y peaks at 1 at 555 nm.
TEST(ColourMatching, makes_equal_energy_white_and_weighs_green_most) {
  double x = 0, y = 0, z = 0;
  for (const ColourMatch& match : colour_matching_5nm()) x += match.x, y += match.y, z += match.z;
  EXPECT_NEAR(x / (x + y + z), 0.333314, 1e-6);
  EXPECT_NEAR(y / (x + y + z), 0.333288, 2e-6);
  EXPECT_EQ(colour_matching_5nm()[39].y, 1.0);  // 360 + 39 x 5 = 555 nm
}

// ITU-R BT.709-6, items 1.3 and 1.4.
TEST(Rec709, has_its_white_and_primaries) {
  EXPECT_LT((rgb_of(kWhite) - 1.0).abs().maxCoeff(), 1e-12);
  expect_near(chromaticity_of(Rgb(1, 0, 0)), 0.640, 0.330, 1e-12);
  expect_near(chromaticity_of(Rgb(0, 1, 0)), 0.300, 0.600, 1e-12);
  expect_near(chromaticity_of(Rgb(0, 0, 1)), 0.150, 0.060, 1e-12);
}

// IEC 61966-2-1: rows of the matrix from XYZ, worked out to ten digits from the primaries, applied to X = Y =
// Z = 1.
TEST(Rec709, shows_equal_energy_as_the_matrix_has_it) {
  const Rgb rgb = rgb_of({1.0 / 3.0, 1.0 / 3.0});
  EXPECT_NEAR(rgb[0], 1.2049760, 5e-5);
  EXPECT_NEAR(rgb[1], 0.9482789, 5e-5);
  EXPECT_NEAR(rgb[2], 0.9086246, 5e-5);
}

TEST(Rec709, brings_back_every_colour_it_can_show_and_keeps_the_luminance_of_all) {
  for (double t = 1000.0; t <= 25000.0; t *= 1.05) {
    const Chromaticity black_body = *planckian_locus(t);
    const Rgb rgb = rgb_of(black_body);
    EXPECT_NEAR(luminance(rgb), 1.0, 1e-12) << t;
    EXPECT_GE(rgb.minCoeff(), 0.0) << t;
    if (t > 2000.0) expect_near(chromaticity_of(rgb), black_body.x, black_body.y, 1e-9);
  }
}

TEST(Rec709, mixes_with_white_what_it_cannot_show) {
  const Chromaticity ember = *planckian_locus(1200.0);
  const Rgb rgb = rgb_of(ember);
  const Chromaticity shown = chromaticity_of(rgb);
  EXPECT_EQ(rgb[2], 0.0);
  // On the straight line from white to the ember, nearer.
  const double share = (shown.x - kWhite.x) / (ember.x - kWhite.x);
  EXPECT_NEAR(kWhite.y + share * (ember.y - kWhite.y), shown.y, 1e-4);
  EXPECT_GT(share, 0.5);
  EXPECT_LT(share, 1.0);
}

// McCamy, Color Research and Application 17(2), 1992, applied to CIE 15's coordinates of the illuminants.
TEST(CorrelatedTemperature, is_mccamys) {
  const double table[][3] = {{.44758, .40745, 2857.131}, {.34567, .35850, 5002.097},
                             {.33242, .34743, 5502.623}, {.31272, .32903, 6503.772},
                             {.29902, .31485, 7501.806}, {1 / 3.0, 1 / 3.0, 5458.952}};
  for (const auto& [x, y, t] : table) EXPECT_NEAR(correlated_temperature_K({x, y}), t, 0.001) << t;
}

// What the header says about the formula.
TEST(CorrelatedTemperature, of_a_black_body_is_about_its_temperature) {
  const double table[][2] = {{2000, 0.01},  {2500, 0.004},  {4000, 0.003},
                             {8000, 0.003}, {10000, 0.012}, {12500, 0.04}};
  for (const auto& [t, limit] : table)
    EXPECT_NEAR(correlated_temperature_K(*planckian_locus(t)) / t, 1.0, limit) << t;
  EXPECT_LT(correlated_temperature_K(*planckian_locus(25000.0)), 0.8 * 25000.0);
}

TEST(CorrelatedTemperature, comes_back_from_the_light_of_a_temperature) {
  for (const double t : {2856.0, 3500.0, 4500.0, 5500.0, 6500.0})
    EXPECT_NEAR(correlated_temperature_K(chromaticity_of(*light_of_temperature(t))), t, 0.004 * t) << t;
}

TEST(LightOfTemperature, gets_bluer_without_a_jump) {
  double before = luminance(grey(0.0));
  Rgb last = *light_of_temperature(1000.0);
  for (double reciprocal = 1000.0; reciprocal >= 40.0; reciprocal -= 1.0) {
    const double t = 1e6 / reciprocal;
    const Rgb now = *light_of_temperature(t);
    EXPECT_GE(now[2] / now[0], before) << t;
    EXPECT_LT((now - last).abs().maxCoeff(), 0.02) << t;
    before = now[2] / now[0];
    last = now;
  }
  EXPECT_FALSE(light_of_temperature(999.0));
  EXPECT_FALSE(light_of_temperature(25001.0));
}

// Arithmetic: 1e6 / T.
TEST(Mired, shifts_are_differences_of_reciprocals) {
  const double table[][3] = {
      {2856, 5500, -168.322}, {3200, 5500, -130.682}, {5500, 7500, -48.485}, {6500, 10000, -53.846}};
  for (const auto& [from, to, shift] : table) EXPECT_NEAR(mired_shift(from, to), shift, 6e-4);
  EXPECT_NEAR(mired_shift(10000, 5500), 81.8, 0.02);  // the blue of a clear sky's fill against the sun
}

}  // namespace
}  // namespace fillside
