// A bent sheet with a thickness: a leaf, a folded cloth, the bowl of a spoon.
#pragma once

#include <functional>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// A grid of cells with an upper and a lower face; column grows to the right and row away when the upper face
/// is up. What `has` leaves out is a hole or a gap with walls of its own; two kept cells may not meet at a
/// corner alone.
struct SlabGrid {
  int columns, rows;  ///< cells; corners are numbered 0..columns, 0..rows
  std::function<Point(int, int)> upper, lower;
  std::function<bool(int, int)> has = [](int, int) { return true; };
};

/// Closed: both faces and the walls wherever the sheet ends.
Mesh slab(const SlabGrid& grid);

}  // namespace fillside
