// Balls and discs as lamps have them: known exactly, and as fine meshes for rays to meet.
#pragma once

#include "libsim/geometry/rectangle.h"

namespace fillside {

struct Sphere {
  Point centre = Point::Zero();
  double radius_m = 0.03;

  double area_m2() const { return 4.0 * kPi * radius_m * radius_m; }
};

/// Flat and round; its front is where `normal` points.
struct Disc {
  Point centre = Point::Zero();
  Direction normal = Direction::UnitZ();
  double radius_m = 0.1;

  double area_m2() const { return kPi * radius_m * radius_m; }
  /// Is a point of its plane on it?
  bool has(const Point& point) const { return (point - centre).squaredNorm() <= radius_m * radius_m; }
};

/// Fine meshes whose corners lie on the true shape: they are a little smaller, never larger, so that a shadow
/// ray to the true shape ends before it meets the mesh. What is missing seen from far is 2e-4 of the area at
/// most.
Mesh mesh_of(const Sphere& sphere);
Mesh mesh_of(const Disc& disc);

/// The square that just holds the disc, facing as it does.
Rectangle square_around(const Disc& disc);

}  // namespace fillside
