// A flat rectangle in space: window openings, board faces, cloths, map planes.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

struct Rectangle {
  Point centre = Point::Zero();
  Eigen::Vector3d half_u = {0.5, 0, 0};  ///< from the centre to the middle of an edge
  Eigen::Vector3d half_v = {0, 0.5,
                            0};  ///< to the middle of the next edge; half_u x half_v points to the front

  Direction normal() const { return half_u.cross(half_v).normalized(); }
  double area_m2() const { return 4.0 * half_u.norm() * half_v.norm(); }
  /// u, v in -1..1.
  Point at(double u, double v) const { return centre + u * half_u + v * half_v; }
  /// In-plane coordinates of a point, -1..1 inside.
  Eigen::Vector2d coordinates_of(const Point& point) const {
    return {(point - centre).dot(half_u) / half_u.squaredNorm(),
            (point - centre).dot(half_v) / half_v.squaredNorm()};
  }
};

/// Two triangles, facing the rectangle's front.
Mesh mesh_of(const Rectangle& rectangle);

/// A rectangle that faces a direction, its v side as near to upward (for a level one: away from the camera)
/// as can be.
Rectangle rectangle_facing(const Point& centre, const Direction& faces, double width_m, double height_m);

}  // namespace fillside
