#include "libsim/light/lamp.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

const LampShape kBall = Sphere{{0, 0, 1}, 0.03}, kDisc = Disc{{0, 0, 1}, -Direction::UnitZ(), 0.125};
const LampShape kPanel = Rectangle{{0, 0, 1}, {0.15, 0, 0}, {0, 0.1, 0}};

// Lambert: exitance pi L over what shines.
TEST(Lamp, shares_its_lumens_out_over_what_shines) {
  EXPECT_NEAR(luminance_by_flux(kBall, lumens(800)).si, 800 / (kPi * 4 * kPi * 0.0009), 1e-6);
  EXPECT_NEAR(luminance_by_flux(kDisc, lumens(800)).si, 800 / (kPi * kPi * 0.015625), 1e-9);
  EXPECT_NEAR(luminance_by_flux(kPanel, lumens(800)).si, 800 / (kPi * 0.06), 1e-9);
}

TEST(Lamp, far_away_is_a_point_source) {
  // I = L A for a face, L pi R2 for a ball; E = I / d2.
  for (const auto& [shape, area] : {std::pair{kBall, kPi * 0.0009}, {kDisc, kPi * 0.015625}, {kPanel, 0.06}})
    EXPECT_NEAR(kPi * axial_factor(shape, 100.0), area / 1e4, 1e-4 * area / 1e4);
}

TEST(Lamp, close_by_fills_half_of_the_sky) {
  EXPECT_NEAR(axial_factor(kBall, 0.030001), 1.0, 1e-4);
  EXPECT_NEAR(axial_factor(kDisc, 1e-4), 1.0, 1e-5);
  EXPECT_NEAR(axial_factor(kPanel, 1e-5), 1.0, 1e-6);
  EXPECT_EQ(axial_factor(kBall, 0.02), 0.0);
}

TEST(Lamp, is_as_bright_as_its_reading_asks) {
  for (const LampShape& shape : {kBall, kDisc, kPanel})
    EXPECT_NEAR(kPi * axial_factor(shape, 0.5) * luminance_by_reading(shape, lux(300), metres(0.5)).si, 300.0,
                1e-9);
}

}  // namespace
}  // namespace fillside
