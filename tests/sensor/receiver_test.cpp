#include "libsim/sensor/receiver.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "tests/base/chi_square.h"
#include "tests/base/dice.h"
#include "tests/base/over_sphere.h"

namespace fillside {
namespace {

const Direction kTilted{0.48, -0.64, 0.6};

Receiver facing(const Direction& normal, const decltype(Receiver::kind)& kind) {
  return {Point(0.1, 0.2, 0.3), normal, kind};
}

/// Reading under the same radiance from everywhere.
double even_reading(const Receiver& receiver) {
  return tests::over_sphere(0.0,
                            [&](const Direction& to_source) { return response(receiver, to_source)[1]; });
}

TEST(FlatReceptor, counts_by_the_cosine_in_front_and_nothing_from_behind) {
  const Receiver flat = facing(kTilted, FlatReceptor{});
  EXPECT_NEAR(response(flat, kTilted)[0], 1.0, 1e-12);
  EXPECT_NEAR(response(flat, {0, 0, 1})[1], 0.6, 1e-12);
  EXPECT_EQ(response(flat, -kTilted)[2], 0.0);
  EXPECT_EQ(response(flat, {0, 0, -1})[2], 0.0);
}

// Lambert, Photometria, 1760: the same radiance L over a hemisphere gives pi L.
TEST(FlatReceptor, reads_pi_in_an_even_field) {
  EXPECT_NEAR(even_reading(facing(kTilted, FlatReceptor{})), kPi, 1e-3);
}

// ISO 2720:1974, hemispherical receptor: (1 + cos) / 2, so that a beam from the front reads as on a flat
// receptor.
TEST(DomedReceptor, counts_by_the_cardioid) {
  const Receiver dome = facing(kTilted, DomedReceptor{});
  EXPECT_NEAR(response(dome, kTilted)[0], 1.0, 1e-12);
  EXPECT_NEAR(response(dome, kTilted.unitOrthogonal())[0], 0.5, 1e-12);
  EXPECT_NEAR(response(dome, -kTilted)[0], 0.0, 1e-12);
  EXPECT_NEAR(even_reading(dome), 2.0 * kPi, 1e-3);
}

// Sum of the two cardioids is 1 from everywhere: together they read the scalar light, four times the mean
// spherical illuminance; their difference is the light vector along the axis.
TEST(DomedReceptor, and_the_one_facing_away_together_count_every_direction_alike) {
  const Receiver dome = facing(kTilted, DomedReceptor{}), away = facing(-kTilted, DomedReceptor{});
  tests::Dice dice(81);
  for (int i = 0; i < 500; ++i) {
    const Direction to_source = dice.throw_direction();
    EXPECT_NEAR((response(dome, to_source) + response(away, to_source))[1], 1.0, 1e-12);
    EXPECT_NEAR((response(dome, to_source) - response(away, to_source))[1], to_source.dot(kTilted), 1e-12);
  }
}

TEST(SeenSurface, counts_by_its_scattering_toward_the_viewer) {
  const Direction to_viewer = (kTilted + Direction(0.2, 0.3, -0.1)).normalized();
  const Receiver seen = facing(kTilted, SeenSurface{Matte{{0.6, 0.3, 0.1}}, to_viewer});
  EXPECT_NEAR(response(seen, kTilted)[0], 0.6 / kPi, 1e-12);
  EXPECT_NEAR(response(seen, {0, 0, 1})[1], 0.3 * 0.6 / kPi, 1e-12);
  EXPECT_EQ(response(seen, -kTilted)[0], 0.0);
  EXPECT_NEAR(even_reading(seen), 0.3, 1e-3);
}

TEST(SeenSurface, that_is_cloth_counts_what_comes_through_it_as_well) {
  const ThinCloth cloth{grey(0.2), grey(0.4), grey(0.3)};
  const Receiver front = facing(kTilted, SeenSurface{cloth, kTilted});
  const Receiver back = facing(kTilted, SeenSurface{cloth, -kTilted});
  EXPECT_NEAR(response(front, kTilted)[0], 0.3 / kPi, 1e-12);
  EXPECT_NEAR(response(front, -kTilted)[0], 0.4 / kPi, 1e-12);
  EXPECT_NEAR(response(back, kTilted)[0], 0.4 / kPi, 1e-12);
  EXPECT_NEAR(even_reading(front), 0.7, 1e-3);
}

/// Draws against the response's share in cells of polar angle (about the receiver's normal) and azimuth.
void expect_drawn_in_proportion(const Receiver& receiver) {
  constexpr int kRings = 16, kSpokes = 8, kDraws = 40000, kFine = 20;
  const Frame frame = frame_around(receiver.normal);
  const auto cell = [](const Eigen::Vector3d& local) {
    const double polar = std::acos(std::clamp(local.z(), -1.0, 1.0)), turn = std::atan2(local.y(), local.x());
    return static_cast<std::size_t>(
        std::min(kRings - 1, static_cast<int>(polar / kPi * kRings)) * kSpokes +
        std::min(kSpokes - 1, static_cast<int>((turn / (2 * kPi) + 0.5) * kSpokes)));
  };
  std::vector<double> expected(kRings * kSpokes);
  std::vector<int> counts(kRings * kSpokes);
  double whole = 0.0;
  for (int i = 0; i < kRings * kFine; ++i)
    for (int j = 0; j < kSpokes * kFine; ++j) {
      const double polar = kPi * (i + 0.5) / (kRings * kFine);
      const Eigen::Vector3d local =
          tests::direction_at(polar, 2.0 * kPi * (j + 0.5) / (kSpokes * kFine) - kPi);
      const double share = response(receiver, frame.to_world(local))[1] * std::sin(polar);
      expected[cell(local)] += share;
      whole += share;
    }
  tests::Dice dice(82);
  for (int i = 0; i < kDraws; ++i) {
    Numbers4 u{};
    for (double& number : u) number = dice.throw_one();
    const auto drawn = draw_response(receiver, u);
    ASSERT_TRUE(drawn);
    EXPECT_NEAR(drawn->to_source.norm(), 1.0, 1e-9);
    ++counts[cell(frame.to_local(drawn->to_source))];
  }
  std::vector<double> kept;
  std::vector<int> kept_counts;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double draws = expected[i] / whole * kDraws;
    if (draws < 5.0) {
      EXPECT_LT(counts[i], 5.0 + 6.0 * std::sqrt(draws));
    } else {
      kept.push_back(draws);
      kept_counts.push_back(counts[i]);
    }
  }
  EXPECT_LT(tests::chi_square(kept_counts, kept),
            tests::chi_square_limit(static_cast<double>(kept.size()) - 1.0));
}

TEST(DrawResponse, draws_each_kind_in_proportion_to_its_response) {
  expect_drawn_in_proportion(facing(kTilted, FlatReceptor{}));
  expect_drawn_in_proportion(facing(kTilted, DomedReceptor{}));
  expect_drawn_in_proportion(facing(-kTilted, SeenSurface{Matte{grey(0.5)}, -kTilted}));
  expect_drawn_in_proportion(facing(kTilted, SeenSurface{ThinCloth{grey(0), grey(0.3), grey(0.5)}, kTilted}));
}

TEST(DrawResponse, has_the_even_reading_as_its_mean_weight) {
  const std::vector<Receiver> receivers{
      facing(kTilted, FlatReceptor{}), facing(kTilted, DomedReceptor{}),
      facing(kTilted, SeenSurface{Matte{grey(0.5)}, kTilted}),
      facing(kTilted, SeenSurface{ThinCloth{grey(0.2), grey(0.4), grey(0.3)}, kTilted})};
  for (const Receiver& receiver : receivers) {
    tests::Dice dice(83);
    double sum = 0.0;
    constexpr int kDraws = 40000;
    for (int i = 0; i < kDraws; ++i) {
      Numbers4 u{};
      for (double& number : u) number = dice.throw_one();
      if (const auto drawn = draw_response(receiver, u)) sum += drawn->weight[1];
    }
    EXPECT_NEAR(sum / kDraws, even_reading(receiver), 0.012);
  }
}

}  // namespace
}  // namespace fillside
