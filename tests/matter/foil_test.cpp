#include "libsim/matter/foil.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/matter/catalogue.h"
#include "libsim/matter/lobe.h"
#include "tests/base/dice.h"
#include "tests/base/over_sphere.h"
#include "tests/matter/returned_light.h"

namespace fillside {
namespace {

/// All that a foil sends to a viewer at that angle when light comes evenly from everywhere.
Rgb returned_light(const Foil& foil, double degrees) {
  return tests::returned_light(
      [&](const Direction& to_viewer, const Direction& to_source) {
        return scattering_cosine_per_sr(foil, to_viewer, to_source);
      },
      foil.roughness, degrees);
}

TEST(Foil, that_is_an_exact_mirror_draws_the_mirror_direction_only) {
  const Direction to_viewer = Direction(0.6, 0.2, -0.5).normalized();
  const auto drawn = draw_scattering(Foil{grey(0.85), 1.0, 0.0}, to_viewer, {0.3, 0.6, 0.99, 0.1});
  ASSERT_TRUE(drawn);
  EXPECT_EQ(drawn->turn, Turn::mirrored);
  EXPECT_EQ(drawn->to_source, Direction(-to_viewer.x(), -to_viewer.y(), to_viewer.z()));
  EXPECT_EQ(drawn->weight[0], 0.85);
}

TEST(Foil, sends_its_lobe_to_where_a_mirror_would) {
  // The light vector of a lobe seen at 30 degrees leans as far to the other side.
  const Foil foil{grey(1.0), 1.0, 0.05};
  const Eigen::Vector3d mean = tests::over_sphere(Eigen::Vector3d(0, 0, 0), [&](const Direction& to_source) {
    return Eigen::Vector3d(
        scattering_cosine_per_sr(foil, tests::direction_at(30 * kDegree, 0.0), to_source)[1] * to_source);
  });
  EXPECT_NEAR(std::atan2(-mean.x(), mean.z()) / kDegree, 30.0, 0.5);
  EXPECT_NEAR(mean.y(), 0.0, 1e-9);
}

// Walter, Marschner, Li, Torrance, "Microfacet Models for Refraction through Rough Surfaces", EGSR 2007,
// equations 20 and 33: square on, the mirror direction gets D(0) G / 4 with D(0) = 1 / (pi alpha^2) and G
// = 1.
TEST(Lobe, has_walters_peak_square_on) {
  for (const double alpha : {0.1, 0.3, 0.7})
    EXPECT_NEAR(lobe_cosine_per_sr(alpha, {0, 0, 1}, {0, 0, 1}), 0.25 / (kPi * alpha * alpha),
                1e-9 / (alpha * alpha));
}

// Kulla and Conty, "Revisiting Physically Based Shading at Imageworks", SIGGRAPH 2017 course: with the
// compensation a white lobe returns everything (the furnace), and a tinted one its tint.
TEST(Foil, returns_its_reflectance_at_every_roughness_and_angle) {
  const double tint = 0.7;
  for (const double alpha : {0.05, 0.06, 0.08, 0.1, 0.15, 0.2, 0.35, 0.5, 0.75, 1.0})
    for (const double degrees : {0.0, 20.0, 40.0, 60.0, 75.0, 82.0, 86.0, 88.0, 89.0}) {
      const Foil foil{{1.0, tint, 0.0}, 1.0, alpha};
      const Rgb returned = returned_light(foil, degrees);
      EXPECT_NEAR(returned[0], 1.0, 0.005) << alpha << ", " << degrees << " degrees";
      EXPECT_NEAR(returned[1], tint * returned[0], 1e-9);
      EXPECT_EQ(returned[2], 0.0);
    }
}

TEST(Foil, of_the_catalogue_returns_the_reflectance_it_is_listed_with) {
  int lobes = 0;
  for (const CataloguedSurface& surface : catalogued_surfaces()) {
    if (surface.specular_share <= 0.0 || surface.roughness <= 0.0) continue;
    ++lobes;
    const Foil foil{grey(surface.reflectance), surface.specular_share, surface.roughness};
    for (const double degrees : {0.0, 45.0, 70.0})
      EXPECT_NEAR(returned_light(foil, degrees)[1], surface.reflectance, 0.003)
          << surface.name << ", " << degrees;
  }
  EXPECT_GT(lobes, 0);
}

// The narrow lobes are here because the grids of material_test.cpp are too coarse for them at grazing angles.
TEST(Foil, draws_what_it_returns_with_weights_near_one) {
  constexpr int kDraws = 20000;
  for (const double alpha : {0.05, 0.1, 0.35, 1.0})
    for (const double degrees : {0.0, 45.0, 80.0, 87.0, 89.0}) {
      const Foil foil{grey(1.0), 1.0, alpha};
      tests::Dice dice(41);
      double sum = 0.0, squares = 0.0;
      for (int i = 0; i < kDraws; ++i) {
        const auto drawn = draw_scattering(foil, tests::direction_at(degrees * kDegree, 0.4),
                                           {dice.throw_one(), dice.throw_one(), dice.throw_one(), 0.0});
        const double weight = drawn ? drawn->weight[1] : 0.0;
        sum += weight / kDraws;
        squares += weight * weight / kDraws;
      }
      EXPECT_LT(squares, 1.3) << alpha << ", " << degrees;  // 1 were all weights 1
      EXPECT_NEAR(sum, returned_light(foil, degrees)[1],
                  1e-4 + 5.0 * std::sqrt((squares - sum * sum) / kDraws))
          << alpha << ", " << degrees;
    }
}

}  // namespace
}  // namespace fillside
