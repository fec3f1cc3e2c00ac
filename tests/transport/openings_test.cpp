#include "libsim/transport/openings.h"

#include <gtest/gtest.h>

#include "libsim/light/outside.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

/// A window 1.2 m square in the plane y = 0, masked to a quarter of its width and half of its height.
Scene behind_a_mask() {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(1000));
  Opening opening;
  opening.glass.panes = 0;
  opening.rectangle = {{0, 0, 0.6}, {-0.6, 0, 0}, {0, 0, 0.6}};
  if (opening.rectangle.normal().y() < 0.0) opening.rectangle.half_u *= -1.0;
  opening.cover.left = 0.5;
  opening.cover.bottom = -0.25;
  opening.cover.top = 0.75;
  parts.add_emitter("window", opening);
  return Scene(std::move(parts));
}

// No shadow ray is spent on the mask, and all of the clear part is reached.
TEST(Openings, of_a_masked_window_only_the_clear_part_is_aimed_at) {
  const Scene scene = behind_a_mask();
  const Opening& opening = std::get<Opening>(scene.emitters()[0].kind);
  const Point place(0.3, 1.0, 0.2);
  const SeenShape shape = seen_shape(scene.emitters()[0], place);
  tests::Dice dice(3);
  Eigen::Vector2d low(1, 1), high(-1, -1);
  for (int i = 0; i < 2000; ++i) {
    const auto seen = draw_emitter(scene, 0, shape, place, dice.throw_one(), dice.throw_one());
    ASSERT_TRUE(seen);
    EXPECT_GT(seen->emission.straight[0].maxCoeff(), 0.0);
    const Eigen::Vector2d at = opening.rectangle.coordinates_of(seen->point);
    low = low.cwiseMin(at);
    high = high.cwiseMax(at);
  }
  EXPECT_LT((low - Eigen::Vector2d(0.5, -0.25)).cwiseAbs().maxCoeff(), 0.01);
  EXPECT_LT((high - Eigen::Vector2d(1.0, 0.75)).cwiseAbs().maxCoeff(), 0.01);
}

// The density is one over the solid angle that the clear part covers, by its four corners: Van Oosterom and
// Strackee, "The Solid Angle of a Plane Triangle", IEEE Transactions on Biomedical Engineering 30(2), 1983,
// eq. 8.
double triangle_sr(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& c) {
  const double l = a.norm(), m = b.norm(), n = c.norm();
  return 2.0 *
         std::atan2(std::abs(a.dot(b.cross(c))), l * m * n + a.dot(b) * n + b.dot(c) * l + c.dot(a) * m);
}

TEST(Openings, density_is_that_of_the_clear_parts_solid_angle) {
  const Scene scene = behind_a_mask();
  const Rectangle clear = clear_part(std::get<Opening>(scene.emitters()[0].kind));
  const Point place = clear.centre + Point(0.1, 0.6, -0.2);  // near: far off it draws by area
  const auto corner = [&](double u, double v) { return Eigen::Vector3d(clear.at(u, v) - place); };
  const double all_sr = triangle_sr(corner(-1, -1), corner(1, -1), corner(1, 1)) +
                        triangle_sr(corner(-1, -1), corner(1, 1), corner(-1, 1));
  EXPECT_NEAR(density_of_emitter(scene, 0, place, clear.centre).emitter_per_sr * all_sr, 1.0, 1e-6);
}

}  // namespace
}  // namespace fillside
