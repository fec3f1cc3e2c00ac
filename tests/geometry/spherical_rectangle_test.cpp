#include "libsim/geometry/spherical_rectangle.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "tests/base/chi_square.h"
#include "tests/base/dice.h"

namespace fillside {
namespace {

/// Van Oosterom and Strackee, "The Solid Angle of a Plane Triangle", IEEE Trans. Biomed. Eng. 30(2), 1983,
/// eq. 8.
double triangle_sr(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& c) {
  const double triple = std::abs(a.dot(b.cross(c))), la = a.norm(), lb = b.norm(), lc = c.norm();
  return 2.0 * std::atan2(triple, la * lb * lc + a.dot(b) * lc + a.dot(c) * lb + b.dot(c) * la);
}

double solid_angle_sr(const Rectangle& r, const Point& from) {
  const Eigen::Vector3d a = r.at(-1, -1) - from, b = r.at(1, -1) - from, c = r.at(1, 1) - from,
                        d = r.at(-1, 1) - from;
  return triangle_sr(a, b, c) + triangle_sr(a, c, d);
}

// A window 1.2 m x 1.2 m in the wall y = 0, its sill at the height of the table; front to +y.
const Rectangle kWindow{{0, 0, 0.6}, {-0.6, 0, 0}, {0, 0, 0.6}};

struct View {
  std::string name;
  Rectangle rectangle;
  Point from;
};

const std::vector<View>& views() {
  static const std::vector<View> all{
      {"from_the_table", kWindow, {0, 1, 0}},
      {"from_beside", kWindow, {1.7, 0.4, 1.9}},
      {"nearly_touching", kWindow, {0.1, 1e-3, 0.5}},
      {"nearly_touching_a_corner", kWindow, {0.6, 1e-3, 1.2}},
      {"grazing", kWindow, {2.5, 0.03, 0.6}},
      {"huge", {{0, 0, 0}, {-500, 0, 0}, {0, 0, 300}}, {20, 1, -10}},
      {"a_long_strip", {{0, 0, 0}, {-5, 0, 0}, {0, 0, 0.005}}, {1, 0.3, 0.1}},
      {"far", kWindow, {3, 20, 5}},
      {"far_and_aslant", kWindow, {6, 2, 1}},
      {"tilted", {{0.2, 0.5, 0.1}, {0.18, 0.24, 0}, {-0.08, 0.06, 0.5}}, Point(1.4, -0.3, 0.2)},
  };
  return all;
}

class SphericalRectangleFrom : public testing::TestWithParam<View> {};

TEST_P(SphericalRectangleFrom, measures_the_solid_angle_of_its_two_triangles) {
  const auto& [name, rectangle, from] = GetParam();
  const SphericalRectangle seen(rectangle, from);
  ASSERT_TRUE(seen.visible());
  const double exact = solid_angle_sr(rectangle, from);
  EXPECT_NEAR(seen.solid_angle_sr(), exact, seen.drawn_by_area() ? 0.01 * exact : 1e-8);
}

TEST_P(SphericalRectangleFrom, draws_points_that_lie_on_it) {
  const auto& [name, rectangle, from] = GetParam();
  const SphericalRectangle seen(rectangle, from);
  tests::Dice dice(61);
  const double last = 1.0 - 0x1p-32, size_m = rectangle.half_u.norm() + rectangle.half_v.norm();
  for (int i = 0; i < 4000; ++i) {
    const double u = i == 0 ? 0.0 : (i == 1 ? last : dice.throw_one());
    const double v = i % 7 == 0 ? 0.0 : (i % 7 == 1 ? last : dice.throw_one());
    const auto drawn = seen.draw(u, v);
    EXPECT_LE(rectangle.coordinates_of(drawn.point).cwiseAbs().maxCoeff(), 1.0 + 1e-9);
    EXPECT_LT(std::abs((drawn.point - rectangle.centre).dot(rectangle.normal())), 1e-12 * size_m + 1e-12);
    EXPECT_NEAR(drawn.density_per_sr, seen.density_per_sr(drawn.point), 1e-9 * drawn.density_per_sr);
  }
}

TEST_P(SphericalRectangleFrom, draws_evenly_by_solid_angle) {
  const auto& [name, rectangle, from] = GetParam();
  const SphericalRectangle seen(rectangle, from);
  constexpr int kSide = 8, kDraws = 32000;
  std::vector<int> counts(kSide * kSide);
  tests::Dice dice(62);
  for (int i = 0; i < kDraws; ++i) {
    const double u = dice.throw_one(), v = dice.throw_one();
    const Eigen::Vector2d at = rectangle.coordinates_of(seen.draw(u, v).point);
    const auto cell = [](double x) {
      return std::clamp(static_cast<int>(0.5 * (x + 1.0) * kSide), 0, kSide - 1);
    };
    ++counts[static_cast<std::size_t>(cell(at.y()) * kSide + cell(at.x()))];
  }
  std::vector<int> kept{0};  // the first cell gathers those too small for the chi-square
  std::vector<double> expected{1e-9};
  for (int i = 0; i < kSide * kSide; ++i) {
    const Eigen::Vector3d half_u = rectangle.half_u / kSide, half_v = rectangle.half_v / kSide;
    const Rectangle part{
        rectangle.at((2.0 * (i % kSide) + 1.0) / kSide - 1.0, (2.0 * (i / kSide) + 1.0) / kSide - 1.0),
        half_u, half_v};
    const double share = kDraws * solid_angle_sr(part, from) / solid_angle_sr(rectangle, from);
    if (share < 10.0) {
      expected[0] += share;
      kept[0] += counts[static_cast<std::size_t>(i)];
    } else {
      expected.push_back(share);
      kept.push_back(counts[static_cast<std::size_t>(i)]);
    }
  }
  if (expected[0] < 1.0) {
    EXPECT_LT(kept[0], 10);
    expected.erase(expected.begin());
    kept.erase(kept.begin());
  }
  if (kept.size() < 2) return;  // all in one cell: nothing is left to compare
  EXPECT_LT(tests::chi_square(kept, expected),
            tests::chi_square_limit(static_cast<double>(kept.size()) - 1.0));
}

INSTANTIATE_TEST_SUITE_P(Seen, SphericalRectangleFrom, testing::ValuesIn(views()),
                         [](const auto& view) { return view.param.name; });

// Van Oosterom and Strackee 1983: 1.2 m x 1.2 m seen from 1 m before the middle of its sill.
TEST(SphericalRectangle, sees_a_window_of_1_2_m_from_1_m_before_its_sill_under_0_81267256_sr) {
  EXPECT_NEAR(SphericalRectangle(kWindow, {0, 1, 0}).solid_angle_sr(), 0.81267256, 5e-9);
}

TEST(SphericalRectangle, nearly_touched_fills_half_the_sphere) {
  EXPECT_NEAR(SphericalRectangle(kWindow, {0, 1e-5, 0.6}).solid_angle_sr(), 2.0 * kPi, 1e-3);
}

TEST(SphericalRectangle, is_seen_from_its_front_and_from_behind_when_both_sides_count) {
  const Point front{0.3, 1, 0.2}, behind{0.3, -1, 0.2};
  EXPECT_TRUE(SphericalRectangle(kWindow, front).visible());
  EXPECT_FALSE(SphericalRectangle(kWindow, behind).visible());
  EXPECT_EQ(SphericalRectangle(kWindow, behind).density_per_sr(kWindow.centre), 0.0);
  const SphericalRectangle both(kWindow, behind, true);
  EXPECT_TRUE(both.visible());
  EXPECT_NEAR(both.solid_angle_sr(), SphericalRectangle(kWindow, front).solid_angle_sr(), 1e-12);
  for (const double u : {0.1, 0.9}) {
    const Point drawn = both.draw(u, 0.7).point;
    EXPECT_LE(kWindow.coordinates_of(drawn).cwiseAbs().maxCoeff(), 1.0 + 1e-12);
    EXPECT_NEAR(drawn.y(), 0.0, 1e-12);
  }
}

TEST(SphericalRectangle, cannot_be_seen_from_its_own_plane) {
  EXPECT_FALSE(SphericalRectangle(kWindow, {2, 0, 0.6}, true).visible());
  EXPECT_FALSE(SphericalRectangle(kWindow, kWindow.centre, true).visible());
}

TEST(SphericalRectangle, goes_over_to_drawing_by_area_without_a_step) {
  // Across the limit of 2e-3 sr, at slanting views too, both ways agree with the triangles.
  for (double distance_m = 20.0; distance_m < 40.0; distance_m += 0.5)
    for (const double slant : {0.0, 0.5, 1.2}) {
      const Point from = Point(std::sin(slant), std::cos(slant), 0.1) * distance_m;
      const double exact = solid_angle_sr(kWindow, from);
      EXPECT_NEAR(SphericalRectangle(kWindow, from).solid_angle_sr(), exact, 2e-3 * exact) << distance_m;
    }
}

TEST(SphericalRectangle, drawn_by_area_still_weighs_each_direction_rightly) {
  // The mean of 1 / density over the draws is the solid angle, whatever the way of drawing.
  for (const Point& from : {Point(0, 60, 0), Point(50, 8, 20), Point(0.9, 1e-3, 0.6)}) {
    const SphericalRectangle seen(kWindow, from);
    tests::Dice dice(63);
    double mean = 0.0;
    constexpr int kDraws = 40000;
    for (int i = 0; i < kDraws; ++i) {
      const double u = dice.throw_one(), v = dice.throw_one();
      mean += 1.0 / seen.draw(u, v).density_per_sr / kDraws;
    }
    EXPECT_NEAR(mean, solid_angle_sr(kWindow, from), 2e-2 * solid_angle_sr(kWindow, from))
        << from.transpose();
  }
}

RC_GTEST_PROP(SphericalRectangle, from_anywhere_has_the_triangles_solid_angle,
              (int a, int b, std::uint16_t c)) {
  const Point from{a * 0x1p-29, 0.01 + c * 0x1p-14, b * 0x1p-29};
  const double exact = solid_angle_sr(kWindow, from);
  const SphericalRectangle seen(kWindow, from);
  RC_ASSERT(seen.visible());
  RC_ASSERT(std::abs(seen.solid_angle_sr() - exact) < (seen.drawn_by_area() ? 0.2 * exact : 1e-9));
}

}  // namespace
}  // namespace fillside
