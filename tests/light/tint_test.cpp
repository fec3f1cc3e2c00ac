#include "libsim/light/tint.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fillside {
namespace {

// By definition the black body has none. Its colours: Planck's law over the CIE 1931 functions
// (chromaticity.h).
TEST(Tint, of_a_black_body_is_none) {
  for (const double t : {2700.0, 3000.0, 4000.0, 5000.0, 6500.0, 10000.0})
    EXPECT_NEAR(duv(*planckian_locus(t)), 0.0, 1e-4) << t;
}

/// The definition itself: distance in the CIE 1960 diagram to the nearest point of the locus, on a fine grid.
double nearest(const Chromaticity& colour) {
  const auto uv = [](const Chromaticity& c) -> Eigen::Vector2d {
    return Eigen::Vector2d(4.0 * c.x, 6.0 * c.y) / (-2.0 * c.x + 12.0 * c.y + 3.0);
  };
  double least = 1.0, sign = 1.0;
  for (double reciprocal = 60.0; reciprocal < 500.0; reciprocal += 0.5) {
    const Eigen::Vector2d off = uv(colour) - uv(*planckian_locus(1e6 / reciprocal));
    if (off.norm() < least) least = off.norm(), sign = off.y() < 0.0 ? -1.0 : 1.0;
  }
  return sign * least;
}

TEST(Tint, is_the_distance_to_the_black_bodys_locus) {
  for (const Chromaticity colour :
       {Chromaticity{.3127, .3290}, {.3457, .3585}, {.38, .39}, {.42, .38}, {.30, .29}, {.45, .42}})
    EXPECT_NEAR(duv(colour), nearest(colour), 2e-4) << colour.x;
}

// Daylight lies on the green side: D65 at 0.0032 (ANSI C78.377 gives 0.0031 for its 6500 K class; from
// memory).
TEST(Tint, of_daylight_is_a_little_green) {
  for (const double t : {5000.0, 5500.0, 6500.0, 7500.0}) {
    EXPECT_GT(duv(*daylight_locus(t)), 0.0025);
    EXPECT_LT(duv(*daylight_locus(t)), 0.0038);
  }
}

}  // namespace
}  // namespace fillside
