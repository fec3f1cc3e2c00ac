#include "libsim/geometry/heap.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/scatter.h"

namespace fillside {
namespace {

constexpr double kReach_m = 0.05, kGap_m = 2e-4;

std::vector<double> radii(std::size_t count) {
  std::vector<double> all;
  for (std::uint64_t i = 0; i < count; ++i) all.push_back(dealt(3, i, 0.006, 0.010));
  return all;
}

double apart_m(const Sphere& a, const Sphere& b) {
  return (a.centre - b.centre).norm() - a.radius_m - b.radius_m;
}

TEST(Heap, NoTwoBallsComeNearerThanTheGap) {
  const auto heap = heap_of(radii(50), kReach_m, kGap_m, 7);
  ASSERT_EQ(heap.size(), 50U);
  for (std::size_t i = 0; i < heap.size(); ++i) {
    EXPECT_GE(heap[i].centre.z() - heap[i].radius_m, kGap_m - 1e-12);
    EXPECT_LE(heap[i].centre.head<2>().norm() + heap[i].radius_m, kReach_m + 1e-12);
    for (std::size_t j = 0; j < i; ++j) EXPECT_GE(apart_m(heap[i], heap[j]), kGap_m - 1e-9) << i << ' ' << j;
  }
}

TEST(Heap, NoBallHangsInTheAir) {
  const auto heap = heap_of(radii(50), kReach_m, kGap_m, 7);
  for (std::size_t i = 0; i < heap.size(); ++i) {
    double least_m = heap[i].centre.z() - heap[i].radius_m;
    for (std::size_t j = 0; j < i; ++j) least_m = std::min(least_m, apart_m(heap[i], heap[j]));
    EXPECT_NEAR(least_m, kGap_m, 1e-9) << i;
  }
}

/// One ball on three that touch each other and the floor: the four centres are a regular tetrahedron of edge
/// 2 r, so the fourth lies sqrt(2/3) 2 r higher.
TEST(Heap, TheFourthBallOfFourLiesInTheHollowOfThree) {
  const std::vector<double> equal(4, 0.01);
  const auto heap = heap_of(equal, 0.0216, 0.0, 5);  // three in a ring fit, four do not
  EXPECT_NEAR(heap[3].centre.z() - 0.01, std::sqrt(2.0 / 3.0) * 0.02, 0.0015);
}

TEST(Heap, IsFixedByItsSeed) {
  const auto once = heap_of(radii(20), kReach_m, kGap_m, 1), again = heap_of(radii(20), kReach_m, kGap_m, 1),
             other = heap_of(radii(20), kReach_m, kGap_m, 2);
  bool differs = false;
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_EQ(once[i].centre, again[i].centre);
    differs = differs || once[i].centre != other[i].centre;
  }
  EXPECT_TRUE(differs);
}

TEST(Scattered, PlacesKeepTheirDistanceAndStayInReach) {
  const auto places = scattered(30, 0.1, 0.03, 4);
  EXPECT_GE(places.size(), 12U);
  for (std::size_t i = 0; i < places.size(); ++i) {
    EXPECT_LE(places[i].norm(), 0.1);
    for (std::size_t j = 0; j < i; ++j) EXPECT_GE((places[i] - places[j]).norm(), 0.03);
  }
}

TEST(Scattered, FewerArePlacedWhereNoMoreFit) { EXPECT_EQ(scattered(5, 0.01, 0.05, 4).size(), 1U); }

}  // namespace
}  // namespace fillside
