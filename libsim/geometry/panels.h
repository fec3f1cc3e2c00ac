// Flat things made of rectangles: walls with holes in them, boards with thickness, boxes.
#pragma once

#include <span>
#include <vector>

#include "libsim/geometry/rectangle.h"

namespace fillside {

/// The wall's rectangle less the given holes (coplanar, sides parallel to the wall's); faces as the wall
/// does.
Mesh wall_with_holes(const Rectangle& wall, std::span<const Rectangle> holes);

/// The back face of a sheet whose front is given.
Rectangle back_of(const Rectangle& front, double thickness_m);

/// The four narrow faces between front and back.
Mesh edges_of_sheet(const Rectangle& front, double thickness_m);

/// A closed box with its lower face's centre at `foot`, sides along x and y.
Mesh box_mesh(const Point& foot, double width_m, double depth_m, double height_m);

}  // namespace fillside
