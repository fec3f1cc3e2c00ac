// Points, directions, orthonormal frames and rays. Lengths in metres.
// World axes: the origin is the dish on the table top; x right, y away from the camera, z up.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <limits>
#include <numbers>

namespace fillside {

using Point = Eigen::Vector3d;      ///< a place, metres
using Direction = Eigen::Vector3d;  ///< a unit vector; its name says what it points at
using Placement = Eigen::Affine3d;  ///< moves an object from its own axes into the set

inline constexpr double kPi = std::numbers::pi;
inline constexpr double kDegree = kPi / 180.0;

/// A half line, cut off at `far_m`.
struct Ray {
  Point origin;
  Direction direction;
  double far_m = std::numeric_limits<double>::infinity();
};

/// Right-handed orthonormal axes; local z is the normal.
struct Frame {
  Direction tangent, bitangent, normal;

  Direction to_world(const Eigen::Vector3d& local) const {
    return local.x() * tangent + local.y() * bitangent + local.z() * normal;
  }
  Eigen::Vector3d to_local(const Direction& world) const {
    return {world.dot(tangent), world.dot(bitangent), world.dot(normal)};
  }
};

/// A frame around a unit normal, without a branch on its direction.
/// Duff, Burgess, Christensen, Hery, Kensler, Liani, Villemin, "Building an Orthonormal Basis, Revisited",
/// JCGT 6(1), 2017, listing 3.
Frame frame_around(const Direction& normal);

/// Mirror image of `direction` (pointing away from the surface) about the normal; also away from it.
inline Direction reflected(const Direction& direction, const Direction& normal) {
  return 2.0 * direction.dot(normal) * normal - direction;
}

}  // namespace fillside
