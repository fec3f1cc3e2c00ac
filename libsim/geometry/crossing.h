// Do flat sheets cut through each other, or through the skin of a solid?
#pragma once

#include "libsim/geometry/rectangle.h"

namespace fillside {

/// True when the rectangle and a triangle of the mesh cross: an edge of one passes through the other. What
/// only touches, or lies in the same plane, does not cross; nor does a rectangle wholly inside a closed mesh.
bool crosses(const Rectangle& rectangle, const Mesh& mesh);
bool crosses(const Rectangle& one, const Rectangle& other);

/// The rectangle less a margin all round; at least a tenth of each side is left.
Rectangle shrunk(const Rectangle& rectangle, double margin_m);

}  // namespace fillside
