#include "libsim/sensor/patch.h"

#include <gtest/gtest.h>

#include <cmath>

#include "libsim/geometry/panels.h"
#include "tests/base/dice.h"
#include "tests/geometry/ball_mesh.h"

namespace fillside {
namespace {

constexpr double kRadius_m = 0.06;
const Point kCentre{0, 0, kRadius_m};

Scene ball_of(const Material& material, bool subject = true) {
  SceneParts parts;
  parts.add_surface(tests::ball_mesh(kCentre, kRadius_m, 180), material,
                    parts.add_object("ball", ObjectKind::food, subject));
  return Scene(std::move(parts));
}

Receiver drawn(const Patch& patch, tests::Dice& dice) {
  Numbers4 u{};
  for (double& number : u) number = dice.throw_one();
  return patch.draw(u);
}

// Archimedes, On the Sphere and Cylinder: the cap within 20 degrees of a direction has 2 pi r^2 (1 - cos 20).
TEST(Patch, of_a_ball_has_the_caps_area) {
  const Scene scene = ball_of(Matte{});
  const double cap_m2 = 2.0 * kPi * kRadius_m * kRadius_m * (1.0 - std::cos(20 * kDegree));
  for (const Direction& faces : {Direction(-1, 0, 0), Direction(0, 0, 1), Direction(0.6, 0.48, 0.64)}) {
    const Patch patch("lit", scene, faces);
    EXPECT_FALSE(patch.empty());
    EXPECT_NEAR(patch.area_m2(), cap_m2, 0.02 * cap_m2) << faces.transpose();
  }
}

TEST(Patch, draws_skin_that_faces_within_20_degrees_of_the_direction) {
  const Direction faces{-0.8, 0, 0.6};
  const Patch patch("lit", ball_of(Matte{}), faces);
  tests::Dice dice(101);
  for (int i = 0; i < 4000; ++i) {
    const Receiver receiver = drawn(patch, dice);
    EXPECT_GE(receiver.normal.dot(faces), std::cos(20 * kDegree) - 1e-9);
    EXPECT_NEAR((receiver.position - kCentre).norm(), kRadius_m, 2e-4 * kRadius_m);
    EXPECT_GT((receiver.position - kCentre).normalized().dot(receiver.normal), 0.999);
    EXPECT_TRUE(std::holds_alternative<FlatReceptor>(receiver.kind));
  }
}

TEST(Patch, is_drawn_evenly_by_area) {
  // The mean height of a cap along its axis: uniform between r cos 20 and r (Archimedes), so half way.
  const Direction faces{0, -0.6, 0.8};
  const Patch patch("camera side", ball_of(Matte{}), faces);
  tests::Dice dice(102);
  constexpr int kDraws = 20000;
  Eigen::Vector3d mean = Eigen::Vector3d::Zero();
  for (int i = 0; i < kDraws; ++i) mean += (drawn(patch, dice).position - kCentre) / kDraws;
  EXPECT_NEAR(mean.dot(faces), 0.5 * kRadius_m * (1.0 + std::cos(20 * kDegree)), 1e-3 * kRadius_m);
  EXPECT_NEAR((mean - mean.dot(faces) * faces).norm(), 0.0, 0.01 * kRadius_m);
}

TEST(Patch, of_a_box_is_the_face_and_leaves_out_what_faces_elsewhere) {
  SceneParts parts;
  parts.add_surface(box_mesh({0, 0, 0}, 0.2, 0.3, 0.1), Matte{},
                    parts.add_object("box", ObjectKind::food, true));
  const Scene scene(std::move(parts));
  EXPECT_NEAR(Patch("lit", scene, {-1, 0, 0}).area_m2(), 0.03, 1e-12);
  EXPECT_NEAR(Patch("top", scene, {0, 0, 1}).area_m2(), 0.06, 1e-12);
  EXPECT_TRUE(Patch("lit", scene, Direction(1, 1, 0).normalized()).empty());
  EXPECT_EQ(Patch("lit", scene, Direction(1, 1, 0).normalized()).area_m2(), 0.0);
}

TEST(Patch, is_skin_of_the_opaque_subject_only) {
  EXPECT_TRUE(Patch("lit", ball_of(Matte{}, false), {0, 0, 1}).empty());
  EXPECT_TRUE(Patch("lit", ball_of(ClearPane{}), {0, 0, 1}).empty());
  EXPECT_FALSE(Patch("lit", ball_of(Foil{}), {0, 0, 1}).empty());
}

TEST(Patch, leaves_out_skin_that_touches_other_skin) {
  // A filling 1 mm under a lid: its top is no skin; 5 mm under, it is.
  for (const double gap_m : {0.001, 0.005}) {
    SceneParts parts;
    const std::uint16_t food = parts.add_object("pie", ObjectKind::food, true);
    parts.add_surface(box_mesh({0, 0, 0}, 0.2, 0.2, 0.05), Matte{}, food);
    parts.add_surface(box_mesh({0, 0, 0.05 + gap_m}, 0.3, 0.3, 0.01), Matte{}, food);
    const double top_m2 = Patch("top", Scene(std::move(parts)), {0, 0, 1}).area_m2();
    EXPECT_NEAR(top_m2, gap_m < 0.003 ? 0.09 : 0.09 + 0.04, 1e-9);
  }
}

}  // namespace
}  // namespace fillside
