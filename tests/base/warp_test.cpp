#include "libsim/base/warp.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <vector>

#include "tests/base/chi_square.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

constexpr int kDraws = 64000, kHeights = 10, kTurns = 16;

/// A cell number from a height and a turn, both in 0..1.
std::size_t cell(double height, double turn) {
  const int row = std::min(kHeights - 1, static_cast<int>(height * kHeights));
  const int column = std::min(kTurns - 1, static_cast<int>(turn * kTurns));
  return static_cast<std::size_t>(row * kTurns + column);
}

double turn_of(double x, double y) { return std::atan2(y, x) / (2.0 * kPi) + 0.5; }

/// Draws in cells equal in cosine and azimuth, against the density integrated over each (midpoint rule).
void expect_density(Eigen::Vector3d (*draw)(double, double), double (*density_per_sr)(double),
                    double least_cosine) {
  tests::Dice dice(11);
  std::vector<int> counts(kHeights * kTurns);
  std::vector<double> expected(counts.size());
  for (int i = 0; i < kDraws; ++i) {
    const Eigen::Vector3d d = draw(dice.throw_one(), dice.throw_one());
    EXPECT_NEAR(d.norm(), 1.0, 1e-12);
    ++counts[cell((d.z() - least_cosine) / (1.0 - least_cosine), turn_of(d.x(), d.y()))];
  }
  constexpr int kSteps = 64;
  const double step = (1.0 - least_cosine) / (kHeights * kSteps);
  double total = 0.0;
  for (int i = 0; i < kHeights * kSteps; ++i) {
    const double share = density_per_sr(least_cosine + (i + 0.5) * step) * step * 2.0 * kPi / kTurns;
    for (int turn = 0; turn < kTurns; ++turn)
      expected[static_cast<std::size_t>(i / kSteps * kTurns + turn)] += share;
    total += share * kTurns;
  }
  EXPECT_NEAR(total, 1.0, 1e-6);
  for (double& share : expected) share *= kDraws;
  EXPECT_LT(tests::chi_square(counts, expected), tests::chi_square_limit(kHeights * kTurns - 1));
}

TEST(DrawCosineHemisphere, follows_its_density) {
  expect_density(draw_cosine_hemisphere, density_of_cosine_hemisphere_per_sr, 0.0);
}

TEST(DrawCardioid, follows_its_density_over_the_whole_sphere) {
  expect_density(draw_cardioid, density_of_cardioid_per_sr, -1.0);
}

TEST(DensityOfCosineHemisphere, is_nothing_below_the_horizon) {
  EXPECT_EQ(density_of_cosine_hemisphere_per_sr(-0.3), 0.0);
}

/// Cells of equal area: heights and turns are uniform when the shape is filled evenly.
template <class HeightAndTurn>
double unevenness(const HeightAndTurn& draw) {
  tests::Dice dice(12);
  std::vector<int> counts(kHeights * kTurns);
  for (int i = 0; i < kDraws; ++i) {
    const double u = dice.throw_one(), v = dice.throw_one();
    const auto [height, turn] = draw(u, v);
    ++counts[cell(height, turn)];
  }
  return tests::chi_square(counts, kDraws / static_cast<double>(kHeights * kTurns));
}

TEST(DrawDisc, fills_the_disc_evenly) {
  const auto disc = [](double u, double v) {
    const auto [x, y] = draw_disc(u, v);
    return std::pair(x * x + y * y, turn_of(x, y));
  };
  EXPECT_LT(unevenness(disc), tests::chi_square_limit(kHeights * kTurns - 1));
}

TEST(DrawTriangle, fills_the_triangle_evenly) {
  // s = both weights together: the area below s is s^2; along a line of equal s the first weight is uniform.
  const auto triangle = [](double u, double v) {
    const auto [second, third] = draw_triangle(u, v);
    const double s = second + third;
    return std::pair(s * s, second / s);
  };
  EXPECT_LT(unevenness(triangle), tests::chi_square_limit(kHeights * kTurns - 1));
}

RC_GTEST_PROP(DrawTriangle, stays_inside, (std::uint32_t u, std::uint32_t v)) {
  const auto [second, third] = draw_triangle(u * 0x1p-32, v * 0x1p-32);
  RC_ASSERT(second >= 0.0 && third >= 0.0 && second + third <= 1.0);
}

double step_between(PointInDisc a, PointInDisc b) { return std::hypot(a.x - b.x, a.y - b.y); }

// Strata of the square must stay in one piece, or stratified numbers would be wasted.
RC_GTEST_PROP(Warps, neighbours_in_the_square_stay_neighbours, (std::uint32_t a, std::uint32_t b)) {
  const double u = a * 0x1p-32, v = b * 0x1p-32, step = 1e-6;
  for (const auto warp : {draw_disc, draw_triangle}) {
    RC_ASSERT(step_between(warp(u, v), warp(u + step, v)) < 5.0 * step);
    RC_ASSERT(step_between(warp(u, v), warp(u, v + step)) < 5.0 * step);
  }
}

TEST(DrawDisc, sends_the_middle_of_the_square_to_the_middle) {
  EXPECT_EQ(draw_disc(0.5, 0.5).x, 0.0);
  EXPECT_EQ(draw_disc(0.5, 0.5).y, 0.0);
}

}  // namespace
}  // namespace fillside
