#include "libsim/geometry/convex_hull.h"

#include <algorithm>

namespace fillside {

FlatPath convex_hull(FlatPath points) {
  std::ranges::sort(points);
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return points;
  const auto turns_left = [](const auto& a, const auto& b, const auto& c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0.0;
  };
  FlatPath hull;
  for (int side = 0; side < 2; ++side) {
    const std::size_t start = hull.size();
    for (const auto& point : points) {
      while (hull.size() >= start + 2 && !turns_left(hull[hull.size() - 2], hull.back(), point))
        hull.pop_back();
      hull.push_back(point);
    }
    hull.pop_back();
    std::ranges::reverse(points);
  }
  return hull;
}

}  // namespace fillside
