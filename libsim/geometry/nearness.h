// How near a point is to a mesh.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

/// The point of a triangle that is nearest to a point. Ericson, Real-Time Collision Detection, 2005,
/// section 5.1.5.
Point nearest_on_triangle(const Point& point, const Point& a, const Point& b, const Point& c);

/// Distance from a point to the nearest point of the mesh's triangles; 1e30 for an empty mesh.
double distance_m(const Mesh& mesh, const Point& point);

}  // namespace fillside
