// Polygons in space to triangles.
#pragma once

#include <span>
#include <vector>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// Half the vector of Newell's formula: its direction is the polygon's mean normal, its length the area that
/// it covers seen along it. Sutherland, Sproull and Schumacker, "A Characterization of Ten Hidden-Surface
/// Algorithms", ACM Computing Surveys 6(1), 1974, appendix (credited there to M. Newell).
Eigen::Vector3d polygon_area_vector(std::span<const Point> outline);

/// Triangles of a polygon, convex or not, as indices into its outline, wound as it is; count - 2 of them. A
/// corner in the middle of a straight edge is kept as a corner of triangles, so that neighbours still fit.
/// Cuts the best shaped ear first (Meisters, "Polygons Have Ears", American Mathematical Monthly 82(6), 1975,
/// theorem). False when the outline crosses itself or has no area: the triangles then are a fan.
bool triangulate(std::span<const Point> outline, std::vector<Triangle>& triangles);

}  // namespace fillside
