#include "libsim/geometry/crossing.h"

#include <gtest/gtest.h>

#include "libsim/geometry/inside.h"
#include "libsim/geometry/item.h"
#include "libsim/geometry/panels.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

Rectangle upright_at(double x) { return {{x, 0, 0.5}, {0, 0.5, 0}, {0, 0, 0.5}}; }

TEST(Crosses, a_board_that_cuts_a_box_and_not_one_beside_before_or_above_it) {
  const Mesh box = box_mesh({0, 0, 0}, 1, 1, 1);
  EXPECT_TRUE(crosses(upright_at(0.4), box));
  EXPECT_FALSE(crosses(upright_at(0.6), box));
  Rectangle higher = upright_at(0.4);
  higher.centre.z() = 1.6;
  EXPECT_FALSE(crosses(higher, box));
}

TEST(Crosses, a_board_larger_than_the_box_and_a_rod_through_the_board) {
  const Rectangle wall{{0, 0, 0}, {0, 5, 0}, {0, 0, 5}};
  EXPECT_TRUE(crosses(wall, box_mesh({0, 0, 0}, 1, 0.01, 0.01)));  // no edge of the board meets the rod
  const Rectangle chip{{0.5, 0, 0.5}, {0.1, 0, 0}, {0, 0.1, 0}};
  EXPECT_TRUE(crosses(chip, box_mesh({0, 0, 0}, 1, 1, 1)));  // no edge of the box meets the chip
}

TEST(Crosses, not_what_only_touches_or_lies_wholly_inside) {
  const Mesh box = box_mesh({0, 0, 0}, 1, 1, 1);
  EXPECT_FALSE(crosses(upright_at(0.5), box));
  EXPECT_FALSE(crosses(shrunk(upright_at(0.0), 0.1), box));
  EXPECT_TRUE(is_inside(box, upright_at(0.0).centre));
}

TEST(Crosses, two_boards_that_pass_through_each_other_either_way_round) {
  const Rectangle one = upright_at(0.0), other{{0, 0.2, 0.5}, {0.5, 0, 0}, {0, 0, 0.3}};
  EXPECT_TRUE(crosses(one, other));
  EXPECT_TRUE(crosses(other, one));
  Rectangle beside = other;
  beside.centre.x() = 0.51;
  EXPECT_FALSE(crosses(one, beside));
  EXPECT_FALSE(crosses(one, upright_at(0.001)));
}

TEST(Crosses, agrees_with_points_of_the_board_inside_and_outside_of_a_box) {
  const Mesh box = box_mesh({0, 0, -0.5}, 1, 1, 1);
  tests::Dice dice(7);
  int crossings = 0;
  for (int i = 0; i < 300; ++i) {
    const auto draw = [&] {
      return Point(dice.throw_one() - 0.5, dice.throw_one() - 0.5, dice.throw_one() - 0.5);
    };
    const Eigen::Vector3d u = draw();
    const Rectangle board{2.0 * draw(), u, 0.5 * u.cross(draw())};
    int inside = 0, all = 0;
    for (double s = -1.0; s <= 1.0; s += 0.05)
      for (double t = -1.0; t <= 1.0; t += 0.05, ++all) inside += board.at(s, t).cwiseAbs().maxCoeff() < 0.5;
    const bool found = crosses(board, box);
    crossings += found;
    EXPECT_TRUE(found || inside == 0 || inside == all) << i;
    EXPECT_FALSE(found && inside == all) << i;
  }
  EXPECT_GT(crossings, 50);
}

TEST(Shrunk, takes_the_margin_off_each_side_but_never_all) {
  const Rectangle less = shrunk(upright_at(0.0), 0.1);
  EXPECT_NEAR(less.half_u.norm(), 0.4, 1e-12);
  EXPECT_NEAR(less.half_v.norm(), 0.4, 1e-12);
  EXPECT_NEAR(shrunk(upright_at(0.0), 3.0).half_u.norm(), 0.05, 1e-12);
}

// Gauss's theorem for the solid angle: 4 pi from inside a closed surface, 0 from outside.
TEST(WindingNumber, is_one_inside_and_nought_outside_of_every_solid_part_of_every_item) {
  for (const std::string_view kind : item_kinds())
    for (const ItemPart& part : make_item({.kind = std::string(kind),
                                .width_m = {},
                                .depth_m = {},
                                .height_m = {},
                                .relief_m = {},
                                .level = {}})
                                    .parts) {
      const Bounds box = bounds_of(part.mesh);
      tests::Dice dice(3);
      for (int i = 0; i < 30; ++i) {
        const Point inside_box =
            box.low +
            Point(dice.throw_one(), dice.throw_one(), dice.throw_one()).cwiseProduct(box.high - box.low);
        const double turns = winding_number(part.mesh, inside_box);
        EXPECT_NEAR(turns, turns > 0.5 ? 1.0 : 0.0, 1e-6) << kind;
      }
      EXPECT_NEAR(winding_number(part.mesh, box.high + Point(0.01, 0.01, 0.01)), 0.0, 1e-9) << kind;
    }
}

TEST(WindingNumber, of_an_open_square_is_its_solid_angle_over_four_pi) {
  // A cube's face seen from its middle fills a sixth of the sphere.
  const Rectangle face{{0, 0, 0.5}, {0.5, 0, 0}, {0, 0.5, 0}};
  EXPECT_NEAR(winding_number(mesh_of(face), Point::Zero()), 1.0 / 6.0, 1e-12);
}

}  // namespace
}  // namespace fillside
