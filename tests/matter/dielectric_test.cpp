#include "libsim/matter/dielectric.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/matter/fresnel.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

const Dielectric kWater{{}, {.index = 1.333}};

Scattered drawn_with(const Dielectric& face, const Direction& to_viewer, double number) {
  const auto drawn = draw_scattering(face, to_viewer, {0.5, 0.5, number, 0.5});
  EXPECT_TRUE(drawn);
  return *drawn;
}
Scattered refracted(const Dielectric& face, const Direction& to_viewer) {
  return drawn_with(face, to_viewer, 1.0 - 0x1p-32);
}

// Snell's law (Snellius, about 1621; Descartes, Dioptrique, 1637): the ray stays in the plane of incidence,
// and n sin is the same on both sides.
TEST(Dielectric, refracts_by_snells_law_from_both_sides) {
  for (const double polar_deg : {5.0, 40.0, 80.0, 150.0, 170.0}) {
    const Direction to_viewer = tests::direction_at(polar_deg * kDegree, 0.7);
    const Scattered beyond = refracted(kWater, to_viewer);
    EXPECT_EQ(beyond.turn, Turn::straight);
    const double n = medium_toward(kWater, to_viewer.z()).index,
                 m = medium_toward(kWater, -to_viewer.z()).index;
    EXPECT_NEAR(n * to_viewer.x(), -m * beyond.to_source.x(), 1e-12);
    EXPECT_NEAR(n * to_viewer.y(), -m * beyond.to_source.y(), 1e-12);
    EXPECT_LT(beyond.to_source.z() * to_viewer.z(), 0.0);
    EXPECT_NEAR(beyond.to_source.norm(), 1.0, 1e-12);
    EXPECT_NEAR(beyond.concentration, n * n / (m * m), 1e-12);
  }
}

TEST(Dielectric, is_met_backwards_along_the_same_ray) {
  const Direction to_viewer = tests::direction_at(62 * kDegree, -0.4);
  const Scattered in = refracted(kWater, to_viewer), out = refracted(kWater, in.to_source);
  EXPECT_LT((out.to_source - to_viewer).norm(), 1e-12);
  EXPECT_NEAR(in.concentration * out.concentration, 1.0, 1e-12);
}

TEST(Dielectric, mirrors_fresnels_share) {
  for (const double polar_deg : {0.0, 60.0, 85.0, 140.0}) {
    const Direction to_viewer = tests::direction_at(polar_deg * kDegree, 0.0);
    const double ratio = polar_deg < 90.0 ? 1.333 : 1.0 / 1.333;
    const double share = face_reflectance(ratio, std::abs(to_viewer.z()));
    const Scattered mirrored = drawn_with(kWater, to_viewer, share - 1e-6);
    EXPECT_EQ(mirrored.turn, Turn::mirrored);
    EXPECT_EQ(mirrored.to_source, Direction(-to_viewer.x(), -to_viewer.y(), to_viewer.z()));
    EXPECT_EQ(mirrored.concentration, 1.0);
    EXPECT_EQ(drawn_with(kWater, to_viewer, share + 1e-6).turn, Turn::straight);
  }
}

// arcsin(1 / 1.333) = 48.607 degrees.
TEST(Dielectric, lets_nothing_out_beyond_the_critical_angle) {
  EXPECT_EQ(refracted(kWater, tests::direction_at((180.0 - 48.59) * kDegree, 0.0)).turn, Turn::straight);
  EXPECT_EQ(refracted(kWater, tests::direction_at((180.0 - 48.62) * kDegree, 0.0)).turn, Turn::mirrored);
}

TEST(Dielectric, between_equal_media_is_not_there) {
  const Dielectric nothing{{.index = 1.4}, {.index = 1.4}};
  const Direction to_viewer = tests::direction_at(75 * kDegree, 0.2);
  EXPECT_LT((drawn_with(nothing, to_viewer, 1e-12).to_source + to_viewer).norm(), 1e-12);
  EXPECT_EQ(passed_straight(nothing, 0.3), 1.0);
}

// The law of Bouguer, Lambert and Beer: equal depths take equal shares.
TEST(Medium, takes_equal_shares_over_equal_depths) {
  const Rgb tea{20.0, 60.0, 150.0};
  const Rgb once = left_after(tea, 0.01), twice = left_after(tea, 0.02);
  EXPECT_NEAR(once[0], std::exp(-0.2), 1e-12);
  EXPECT_LT((once * once - twice).abs().maxCoeff(), 1e-12);
  EXPECT_EQ(left_after(grey(0.0), 1e9)[1], 1.0);
}

}  // namespace
}  // namespace fillside
