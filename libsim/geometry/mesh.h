// Triangle meshes: what every solid thing in the set is made of.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "libsim/base/space.h"

namespace fillside {

using Triangle = std::array<std::uint32_t, 3>;  ///< corners counter-clockwise seen from outside

struct Mesh {
  std::vector<Point> corners;       ///< metres
  std::vector<Triangle> triangles;  ///< indices into corners

  bool empty() const { return triangles.empty(); }
};

/// Where on a picture the three corners of a triangle lie: to the right and upward, one picture is 1.
using PicturePlaces = std::array<Eigen::Vector2d, 3>;

struct Bounds {
  Point low = Point::Constant(1e30), high = Point::Constant(-1e30);
  void include(const Point& p) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
};

Bounds bounds_of(const Mesh& mesh);
double area_m2(const Mesh& mesh);
/// Twice the area-weighted outward normal; its norm is twice the triangle's area.
Eigen::Vector3d area_vector(const Mesh& mesh, const Triangle& triangle);
/// Signed volume, positive when a closed mesh faces outward. Gauss's theorem over the triangles.
double volume_m3(const Mesh& mesh);

/// Every edge shared by exactly two triangles that run along it in opposite directions (corners compared by
/// index), so that no ray slips in.
bool is_watertight(const Mesh& mesh);

void append(Mesh& mesh, const Mesh& more);
Mesh moved(Mesh mesh, const Placement& placement);

}  // namespace fillside
