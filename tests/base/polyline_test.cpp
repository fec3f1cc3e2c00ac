#include "libsim/base/polyline.h"

#include <gtest/gtest.h>

namespace fillside {
namespace {

TEST(Polyline, goes_straight_from_point_to_point_and_on_level) {
  const PolylinePoint points[] = {{1.0, 10.0}, {2.0, 20.0}, {4.0, 0.0}};
  for (const auto& [at, height] : {PolylinePoint{0.0, 10.0},
                                   {1.0, 10.0},
                                   {1.25, 12.5},
                                   {2.0, 20.0},
                                   {3.0, 10.0},
                                   {4.0, 0.0},
                                   {9.0, 0.0}})
    EXPECT_DOUBLE_EQ(height_of_polyline(points, at), height) << at;
}

TEST(Polyline, of_one_point_is_level) {
  const PolylinePoint point[] = {{1.0, 7.0}};
  EXPECT_EQ(height_of_polyline(point, -5.0), 7.0);
  EXPECT_EQ(height_of_polyline(point, 5.0), 7.0);
}

}  // namespace
}  // namespace fillside
