#include "libsim/view/contours.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "tests/view/map_of.h"

namespace fillside {
namespace {

double length_cm(const Contour& contour) {
  double sum = 0.0;
  const std::size_t count = contour.path_cm.size();
  for (std::size_t i = contour.closed ? 0 : 1; i < count; ++i) {
    const auto& a = contour.path_cm[(i + count - 1) % count];
    const auto& b = contour.path_cm[i];
    sum += std::hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

// Positive when the ring runs counter-clockwise in table coordinates.
double signed_area_cm2(const Contour& contour) {
  double sum = 0.0;
  const std::size_t count = contour.path_cm.size();
  for (std::size_t i = 0; i < count; ++i) {
    const auto& a = contour.path_cm[i];
    const auto& b = contour.path_cm[(i + 1) % count];
    sum += (a[0] * b[1] - a[1] * b[0]) / 2.0;
  }
  return sum;
}

TEST(Contours, AConeGivesOneClosedCircleOfTheRightRadiusAndLength) {
  const Map map = map_of(160, 80, [](double x, double y) { return std::hypot(x - 1.0, y + 0.7); });
  const std::vector<Contour> contours = contours_at(map, {6.0, true, "6"});
  ASSERT_EQ(contours.size(), 1u);
  EXPECT_TRUE(contours[0].closed);
  for (const auto& [x, y] : contours[0].path_cm) EXPECT_NEAR(std::hypot(x - 1.0, y + 0.7), 6.0, 0.003);
  EXPECT_NEAR(length_cm(contours[0]), 2.0 * std::numbers::pi * 6.0, 0.05);
}

TEST(Contours, HigherValuesLieToTheLeft) {
  const Map hill = map_of(80, 40, [](double x, double y) { return -std::hypot(x, y); });
  const Map pit = map_of(80, 40, [](double x, double y) { return std::hypot(x, y); });
  EXPECT_GT(signed_area_cm2(contours_at(hill, {-5.0, true, ""}).at(0)), 70.0);
  EXPECT_LT(signed_area_cm2(contours_at(pit, {5.0, true, ""}).at(0)), -70.0);
}

TEST(Contours, ARampGivesOneStraightLineFromEdgeToEdge) {
  const Map map = map_of(10, 5, [](double x, double) { return 0.1 * x; });
  const std::vector<Contour> contours = contours_at(map, {0.73, true, ""});
  ASSERT_EQ(contours.size(), 1u);
  EXPECT_FALSE(contours[0].closed);
  for (const auto& point : contours[0].path_cm) EXPECT_NEAR(point[0], 7.3, 1e-5);
  EXPECT_NEAR(length_cm(contours[0]), 20.0, 1e-5);
}

TEST(Contours, ATiltedRampStaysStraightUpToTheEdges) {
  const Map map = map_of(16, 8, [](double x, double y) { return x + y; });
  const std::vector<Contour> contours = contours_at(map, {1.0, true, ""});
  ASSERT_EQ(contours.size(), 1u);
  for (const auto& [x, y] : contours[0].path_cm) EXPECT_NEAR(x + y, 1.0, 1e-5);
  EXPECT_NEAR(length_cm(contours[0]), 20.0 * std::numbers::sqrt2, 1e-4);
}

TEST(Contours, ASaddleGivesTwoLinesThatDoNotCross) {
  const Map map = map_of(40, 20, [](double x, double y) { return x * y; });
  const std::vector<Contour> contours = contours_at(map, {4.0, true, ""});
  ASSERT_EQ(contours.size(), 2u);
  for (const Contour& contour : contours) {
    const double sign = contour.path_cm[0][0] > 0.0 ? 1.0 : -1.0;
    for (const auto& [x, y] : contour.path_cm) EXPECT_GT(sign * x, 0.0);
  }
}

TEST(Contours, LinesStopAtCoveredCells) {
  const auto covered = [](double x, double y) { return std::hypot(x, y) < 4.0; };
  const Map map = map_of(80, 40, [&](double x, double y) {
    return covered(x, y) ? std::numeric_limits<double>::quiet_NaN() : x;
  });
  const std::vector<Contour> contours = contours_at(map, {0.0, true, ""});
  EXPECT_EQ(contours.size(), 2u);
  for (const Contour& contour : contours)
    for (const auto& [x, y] : contour.path_cm) EXPECT_GT(std::hypot(x, y), 3.6);
}

TEST(Contours, AllLevelsOfTheScaleAreDrawnWholeStopsHeavy) {
  Map map = map_of(40, 20, [](double x, double) { return x / 10.0; });
  map.in_stops = true, map.low = -1.0, map.high = 1.0;
  const std::vector<Contour> contours = contours_of(map);
  ASSERT_EQ(contours.size(), 7u);
  for (std::size_t i = 0; i < 7; ++i) {
    EXPECT_NEAR(contours[i].path_cm[0][0], -10.0 + 10.0 * static_cast<double>(i) / 3.0, 1e-4);
    EXPECT_EQ(contours[i].level.heavy, i % 3 == 0);
  }
}

TEST(Contours, AMapOfOneCellHasNone) {
  const Map map = map_of(1, 1, [](double, double) { return 1.0; });
  EXPECT_TRUE(contours_at(map, {0.5, true, ""}).empty());
}

}  // namespace
}  // namespace fillside
