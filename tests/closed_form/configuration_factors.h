// Closed forms of E / (pi L): what an evenly shining flat source gives to a small flat receptor.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "libsim/geometry/rectangle.h"

namespace fillside::tests {

/// A rectangle parallel to the receptor at distance c, one corner straight above it, sides a and b. BRE
/// report 187, "External fire spread: building separation and boundary distances", 1991, appendix; Howell, "A
/// Catalog of Radiation Heat Transfer Configuration Factors", section B (rectangles).
inline double parallel_corner(double a, double b, double c) {
  const double A = a / c, B = b / c, rootA = std::sqrt(1.0 + A * A), rootB = std::sqrt(1.0 + B * B);
  return (A / rootA * std::atan(B / rootA) + B / rootB * std::atan(A / rootB)) / (2.0 * kPi);
}

/// A rectangle at right angles to the receptor: height a, width b to one side, its foot at distance c in the
/// receptor's plane. Same sources.
inline double perpendicular_corner(double a, double b, double c) {
  const double slant = std::hypot(a, c);
  return (std::atan(b / c) - c / slant * std::atan(b / slant)) / (2.0 * kPi);
}

using Polygon = std::vector<Point>;

inline Polygon corners_of(const Rectangle& r) { return {r.at(-1, -1), r.at(1, -1), r.at(1, 1), r.at(-1, 1)}; }

/// What of the polygon lies above the receptor's horizon. Sutherland and Hodgman, "Reentrant Polygon
/// Clipping", CACM 17(1), 1974 (citation from memory), for one plane.
inline Polygon above_horizon(const Polygon& polygon, const Point& at, const Direction& faces) {
  Polygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    const double height_a = (a - at).dot(faces), height_b = (b - at).dot(faces);
    if (height_a >= 0.0) kept.push_back(a);
    if ((height_a > 0.0 && height_b < 0.0) || (height_a < 0.0 && height_b > 0.0))
      kept.push_back(a + (b - a) * (height_a / (height_a - height_b)));
  }
  return kept;
}

/// Any polygon, any receptor. Lambert, Photometria, 1760; Baum, Rushmeier, Winget, "Improving Radiosity
/// Solutions through the Use of Analytically Determined Form-Factors", SIGGRAPH 1989, eq. 7 (both from
/// memory).
inline double polygon_factor(const Polygon& whole, const Point& at, const Direction& faces) {
  const Polygon polygon = above_horizon(whole, at, faces);
  double sum = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Eigen::Vector3d a = polygon[i] - at, b = polygon[(i + 1) % polygon.size()] - at;
    const Eigen::Vector3d across = a.cross(b);
    if (across.norm() < 1e-15) continue;
    sum += std::atan2(across.norm(), a.dot(b)) * across.normalized().dot(faces);
  }
  return std::abs(sum) / (2.0 * kPi);
}

/// Illuminance at a receptor by a rectangle of even luminance.
inline double illuminance_by_even(const Rectangle& source, double luminance, const Point& at,
                                  const Direction& faces) {
  return kPi * luminance * polygon_factor(corners_of(source), at, faces);
}

}  // namespace fillside::tests
