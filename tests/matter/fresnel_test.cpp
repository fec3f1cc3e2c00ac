#include "libsim/matter/fresnel.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/base/space.h"
#include "libsim/matter/coat.h"

namespace fillside {
namespace {

// Fresnel, "Memoire sur la loi des modifications que la reflexion imprime a la lumiere polarisee", 1823: the
// sine and the tangent law. Another form of the same, in angles.
TEST(Fresnel, agrees_with_the_sine_and_tangent_laws) {
  for (const double ratio : {1.333, 1.52, 2.4, 1.0 / 1.333})
    for (const double degrees : {1.0, 20.0, 40.0, 48.0, 60.0, 85.0}) {
      const double in = degrees * kDegree, sine = std::sin(in) / ratio;
      if (sine >= 1.0) continue;
      const double out = std::asin(sine);
      const Face face = face_between(ratio, std::cos(in));
      EXPECT_NEAR(face.reflectance_s, std::pow(std::sin(in - out) / std::sin(in + out), 2), 1e-12);
      EXPECT_NEAR(face.reflectance_p, std::pow(std::tan(in - out) / std::tan(in + out), 2), 1e-12);
      EXPECT_NEAR(face.cosine_beyond, std::cos(out), 1e-12);
    }
}

// ((n - 1) / (n + 1))^2 square on, and Brewster's angle arctan n, where nothing of one polarisation is
// mirrored: Brewster, "On the Laws which regulate the Polarisation of Light by Reflexion from Transparent
// Bodies", Phil. Trans. 1815. For n = 1.52: 0.04257999 and 56.6593 degrees.
TEST(Fresnel, has_the_known_reflectance_square_on_and_brewsters_angle) {
  EXPECT_NEAR(face_reflectance(1.52, 1.0), 0.04257999, 1e-8);
  const double brewster = 56.6593 * kDegree;
  EXPECT_LT(face_between(1.52, std::cos(brewster)).reflectance_p, 1e-12);
  EXPECT_GT(face_between(1.52, std::cos(brewster - 0.1)).reflectance_p, 1e-3);
  EXPECT_GT(face_between(1.52, std::cos(brewster + 0.1)).reflectance_p, 1e-3);
}

// Snell's law: from inside, all is mirrored from arcsin(1 / n) on; for water (1.333) 48.607 degrees.
TEST(Fresnel, mirrors_all_from_inside_beyond_the_critical_angle) {
  EXPECT_EQ(face_reflectance(1.0 / 1.333, std::cos(48.61 * kDegree)), 1.0);
  EXPECT_LT(face_reflectance(1.0 / 1.333, std::cos(48.60 * kDegree)), 0.95);
  EXPECT_EQ(face_reflectance(1.0 / 1.333, 0.0), 1.0);
}

TEST(Fresnel, is_the_same_from_both_sides_along_one_ray) {
  for (const double cosine : {1.0, 0.7, 0.3, 0.05}) {
    const Face in = face_between(1.5, cosine);
    EXPECT_NEAR(face_reflectance(1.5, cosine), face_reflectance(1.0 / 1.5, in.cosine_beyond), 1e-12);
    EXPECT_NEAR(face_between(1.0 / 1.5, in.cosine_beyond).cosine_beyond, cosine, 1e-12);
  }
}

// Even light on a smooth face. Walsh, "The Reflection Factor of a Polished Glass Surface for Diffused Light",
// DSIR Illumination Research Technical Paper 2, 1926 (citation and formula from memory).
double walsh(double n) {
  const double n2 = n * n, n4 = n2 * n2;
  return 0.5 + (n - 1.0) * (3.0 * n + 1.0) / (6.0 * (n + 1.0) * (n + 1.0)) +
         n2 * (n2 - 1.0) * (n2 - 1.0) / std::pow(n2 + 1.0, 3) * std::log((n - 1.0) / (n + 1.0)) -
         2.0 * n * n2 * (n2 + 2.0 * n - 1.0) / ((n2 + 1.0) * (n4 - 1.0)) +
         8.0 * n4 * (n4 + 1.0) / ((n2 + 1.0) * (n4 - 1.0) * (n4 - 1.0)) * std::log(n);
}

TEST(SmoothCoat, mirrors_of_even_light_what_walsh_says) {
  for (const double index : {1.333, 1.47, 1.5, 1.8})
    EXPECT_NEAR(Coat(index).mean_mirrored(), walsh(index), 1e-9);
  EXPECT_NEAR(Coat(1.5).mean_mirrored(), 0.0918, 5e-5);
}

TEST(SmoothCoat, mirrors_at_each_angle_by_fresnel) {
  for (const double cosine : {1.0, 0.5, 0.1})
    EXPECT_EQ(Coat(1.5).mirrored(cosine), face_reflectance(1.5, cosine));
}

}  // namespace
}  // namespace fillside
