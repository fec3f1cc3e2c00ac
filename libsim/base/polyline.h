// A line of straight pieces through given points.
#pragma once

#include <cmath>
#include <span>

namespace fillside {

struct PolylinePoint {
  double at, height;
};

/// Height of the line at `at`; level before the first and after the last point. The points in increasing
/// order, at least one.
inline double height_of_polyline(std::span<const PolylinePoint> points, double at) {
  if (at <= points.front().at) return points.front().height;
  for (std::size_t i = 1; i < points.size(); ++i)
    if (at < points[i].at)
      return std::lerp(points[i - 1].height, points[i].height,
                       (at - points[i - 1].at) / (points[i].at - points[i - 1].at));
  return points.back().height;
}

}  // namespace fillside
