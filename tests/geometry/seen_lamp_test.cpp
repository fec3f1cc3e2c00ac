// Balls and discs as seen from a point: what is drawn must lie on them, with the density that is claimed.
#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/seen_disc.h"
#include "libsim/geometry/seen_sphere.h"
#include "tests/base/chi_square.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

using tests::Dice;

const Sphere kBall{{0.3, -0.2, 1.1}, 0.25};
const Disc kDisc{{0.3, -0.2, 1.1}, Direction(0, 0, -1), 0.25};

TEST(SeenSphere, draws_points_of_the_skin_that_face_it) {
  Dice dice(1);
  for (const Point& from : {Point(0, 0, 0), Point(0.3, -0.2, 0.849), Point(40, 3, -20)}) {
    const SeenSphere seen(kBall, from);
    ASSERT_TRUE(seen.visible());
    for (int i = 0; i < 2000; ++i) {
      const Point point = seen.draw(dice.throw_one(), dice.throw_one()).point;
      EXPECT_NEAR((point - kBall.centre).norm(), 0.25, 1e-9);
      EXPECT_GT((from - point).dot(point - kBall.centre), -1e-6);
    }
  }
}

// Archimedes: equal heights of a cap have equal areas, so 1 - cosine is uniform; and so is the angle around.
TEST(SeenSphere, draws_the_cone_evenly) {
  const Point from(0, 0, 0);
  const SeenSphere seen(kBall, from);
  const Direction axis = kBall.centre.normalized();
  const Frame frame = frame_around(axis);
  const double most = 1.0 - std::sqrt(1.0 - 0.0625 / kBall.centre.squaredNorm());
  EXPECT_NEAR(seen.draw(0.3, 0.4).density_per_sr, 1.0 / (2.0 * kPi * most), 1e-9);
  constexpr int kRings = 8, kSpokes = 12, kDraws = 96'000;
  std::vector<int> counts(kRings * kSpokes);
  Dice dice(2);
  for (int i = 0; i < kDraws; ++i) {
    const Direction way =
        frame.to_local((seen.draw(dice.throw_one(), dice.throw_one()).point - from).normalized());
    const double height = (1.0 - way.z()) / most, around = std::atan2(way.y(), way.x()) / (2.0 * kPi) + 0.5;
    const int ring = std::min(kRings - 1, static_cast<int>(height * kRings));
    const int spoke = std::min(kSpokes - 1, static_cast<int>(around * kSpokes));
    ++counts[static_cast<std::size_t>(ring * kSpokes + spoke)];
  }
  EXPECT_LT(tests::chi_square(counts, kDraws / (kRings * kSpokes)),
            tests::chi_square_limit(kRings * kSpokes - 1));
}

TEST(SeenSphere, is_not_seen_from_within_nor_from_its_skin) {
  EXPECT_FALSE(SeenSphere(kBall, kBall.centre).visible());
  EXPECT_FALSE(SeenSphere(kBall, kBall.centre + Point(0.25, 0, 0)).visible());
  EXPECT_TRUE(SeenSphere(kBall, kBall.centre + Point(0.2501, 0, 0)).visible());
}

/// Mean of on-disc / density: the solid angle of the disc, whatever the way of drawing.
double measured_sr(const SeenDisc& seen) {
  Dice dice(3);
  constexpr int kDraws = 200'000;
  double sum = 0.0;
  for (int i = 0; i < kDraws; ++i) {
    const auto drawn = seen.draw(dice.throw_one(), dice.throw_one());
    EXPECT_DOUBLE_EQ(drawn.density_per_sr, seen.density_per_sr(drawn.point));
    EXPECT_NEAR(drawn.point.z(), kDisc.centre.z(), 1e-9);
    if (kDisc.has(drawn.point)) sum += 1.0 / drawn.density_per_sr;
  }
  return sum / kDraws;
}

// On the axis: 2 pi (1 - h / sqrt(h2 + R2)).
TEST(SeenDisc, covers_its_solid_angle_from_near_and_from_afar) {
  for (const double height : {0.05, 0.5, 0.98, 1.02, 5.0}) {
    const SeenDisc seen(kDisc, kDisc.centre - Point(0, 0, height));
    ASSERT_TRUE(seen.visible());
    const double known = 2.0 * kPi * (1.0 - height / std::hypot(height, 0.25));
    EXPECT_NEAR(measured_sr(seen), known, 0.006 * known) << height;
  }
}

TEST(SeenDisc, is_seen_from_its_front_only) {
  EXPECT_FALSE(SeenDisc(kDisc, {0.3, 0.3, 1.5}).visible());
  EXPECT_FALSE(SeenDisc(kDisc, {0.3, 0.3, 1.1}).visible());
  EXPECT_FALSE(SeenDisc(kDisc, {9.3, 0.3, 1.1}).visible());
  EXPECT_TRUE(SeenDisc(kDisc, {0.3, 0.3, 1.0}).visible());
}

}  // namespace
}  // namespace fillside
