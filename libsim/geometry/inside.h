// Is a point inside a closed mesh?
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

/// How often the mesh goes round the point: 1 inside a closed mesh that faces outward, 0 outside it; between
/// the two where the mesh is open. Solid angles by Van Oosterom and Strackee, "The Solid Angle of a Plane
/// Triangle", IEEE Transactions on Biomedical Engineering 30(2), 1983, eq. 8, summed and divided by 4 pi.
double winding_number(const Mesh& mesh, const Point& point);

/// True when the winding number is above one half.
bool is_inside(const Mesh& mesh, const Point& point);

}  // namespace fillside
