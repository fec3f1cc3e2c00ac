#include "libsim/matter/glazed.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/matter/fresnel.h"
#include "libsim/matter/lobe.h"
#include "tests/base/dice.h"
#include "tests/matter/returned_light.h"

namespace fillside {
namespace {

constexpr double kRoughnesses[] = {0.05, 0.1, 0.2, 0.35, 0.6, 1.0};
constexpr double kDegrees[] = {0.0, 20.0, 45.0, 60.0, 75.0, 82.0, 86.0};

Rgb returned_light(const Glazed& glazed, double degrees) {
  return tests::returned_light(
      [&](const Direction& to_viewer, const Direction& to_source) {
        return scattering_cosine_per_sr(glazed, to_viewer, to_source);
      },
      glazed.coat.roughness(), degrees);
}

TEST(RoughCoat, mirrors_as_much_as_its_lobe_integrates_to) {
  for (const double index : {1.333, 1.5})
    for (const double alpha : kRoughnesses)
      for (const double degrees : kDegrees) {
        const Glazed coat_alone{grey(0.0), Coat(index, alpha)};
        EXPECT_NEAR(coat_alone.coat.mirrored(std::cos(degrees * kDegree)),
                    returned_light(coat_alone, degrees)[1], 0.001)
            << "index " << index << ", roughness " << alpha << ", " << degrees << " degrees";
      }
}

// Half of the light that meets a facet square on is not in question: index 1.5 mirrors 0.04 there, and the
// lobe has Walter's peak, F D / 4 with D = 1 / (pi alpha^2). Walter, Marschner, Li, Torrance, "Microfacet
// Models for Refraction through Rough Surfaces", EGSR 2007, equations 20 and 33.
TEST(RoughCoat, has_walters_peak_square_on) {
  for (const double alpha : {0.1, 0.3})
    EXPECT_NEAR(Coat(1.5, alpha).lobe_cosine_per_sr({0, 0, 1}, {0, 0, 1}), 0.01 / (kPi * alpha * alpha),
                1e-9);
}

TEST(RoughCoat, becomes_the_smooth_one_as_its_roughness_goes_to_nothing) {
  for (const double cosine : {1.0, 0.8, 0.5, 0.3, 0.15})
    EXPECT_NEAR(Coat(1.5, 0.002).mirrored(cosine), face_reflectance(1.5, cosine), 0.001) << cosine;
  EXPECT_NEAR(Coat(1.5, 0.002).mean_mirrored(), Coat(1.5).mean_mirrored(), 0.001);
}

// The white furnace: nothing that meets a white body under a clear coat is lost, at any angle.
TEST(Glazed, over_a_white_body_returns_all_light_at_every_roughness_and_angle) {
  for (const double alpha : kRoughnesses)
    for (const double degrees : kDegrees)
      EXPECT_NEAR(returned_light({grey(1.0), Coat(1.5, alpha)}, degrees)[1], 1.0, 0.002)
          << alpha << ", " << degrees << " degrees";
}

TEST(Glazed, that_is_smooth_mirrors_by_fresnel_and_returns_the_rest_from_its_white_body) {
  const Glazed glazed{grey(1.0), Coat(1.5)};
  for (const double degrees : kDegrees) {
    const Direction to_viewer = tests::direction_at(degrees * kDegree, 0.3);
    const Rgb body = tests::over_sphere(grey(0.0), [&](const Direction& to_source) {
      return scattering_cosine_per_sr(glazed, to_viewer, to_source);
    });
    EXPECT_NEAR(body[1], 1.0 - face_reflectance(1.5, to_viewer.z()), 1e-5);
  }
}

TEST(Glazed, that_is_smooth_draws_its_mirror_direction_as_often_as_fresnel_says) {
  const Glazed glazed{{0.7, 0.3, 0.05}, Coat(1.5)};
  const Direction to_viewer = tests::direction_at(70 * kDegree, 0.3);
  const double share = face_reflectance(1.5, to_viewer.z());
  double mirrored = 0.0;
  constexpr int kDraws = 10000;
  for (int i = 0; i < kDraws; ++i) {
    const auto drawn = draw_scattering(glazed, to_viewer, {0.3, 0.4, (i + 0.5) / kDraws, 0.0});
    if (drawn->turn != Turn::mirrored) continue;
    EXPECT_EQ(drawn->to_source, Direction(-to_viewer.x(), -to_viewer.y(), to_viewer.z()));
    mirrored += drawn->weight[0] / kDraws;
  }
  EXPECT_NEAR(mirrored, share, 1e-4);
}

TEST(Glazed, of_a_reflectance_returns_that_share_of_even_light) {
  for (const double alpha : {0.0, 0.1, 0.4})
    for (const double reflectance : {0.2, 0.5, 0.8}) {
      const Coat coat(1.5, alpha);
      const Glazed glazed = glazed_with_reflectance({0.9, 0.8, 0.7}, reflectance, coat);
      EXPECT_NEAR(coat.mean_mirrored() + luminance(glazed.body) * (1.0 - coat.mean_mirrored()), reflectance,
                  1e-12);
      EXPECT_NEAR(glazed.body[1] / glazed.body[0], 8.0 / 9.0, 1e-12);
    }
  EXPECT_EQ(glazed_with_reflectance(grey(1.0), 0.05, Coat(1.5)).body.maxCoeff(), 0.0);
}

// The narrow lobes are here because the grids of material_test.cpp are too coarse for them at grazing angles.
TEST(Glazed, draws_what_it_returns_with_weights_near_one) {
  constexpr int kDraws = 20000;
  for (const double alpha : {0.02, 0.05, 0.2, 1.0})
    for (const double degrees : {0.0, 45.0, 80.0, 87.0, 89.0}) {
      const Glazed glazed{grey(0.5), Coat(1.5, alpha)};
      tests::Dice dice(41);
      double sum = 0.0, squares = 0.0;
      for (int i = 0; i < kDraws; ++i) {
        const auto drawn = draw_scattering(glazed, tests::direction_at(degrees * kDegree, 0.4),
                                           {dice.throw_one(), dice.throw_one(), dice.throw_one(), 0.0});
        const double weight = drawn ? drawn->weight[1] : 0.0;
        sum += weight / kDraws;
        squares += weight * weight / kDraws;
      }
      EXPECT_LT(squares, 1.4 * sum) << alpha << ", " << degrees;
      EXPECT_NEAR(sum, albedo(glazed, tests::direction_at(degrees * kDegree, 0.4))[1],
                  0.001 + 5.0 * std::sqrt((squares - sum * sum) / kDraws))
          << alpha << ", " << degrees;
    }
}

}  // namespace
}  // namespace fillside
