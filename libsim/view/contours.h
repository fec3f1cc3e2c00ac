// Contour lines of a map, joined into polylines, at the levels of levels.h.
#pragma once

#include <array>
#include <vector>

#include "libsim/view/levels.h"
#include "libsim/view/map.h"

namespace fillside {

struct Contour {
  Level level;
  std::vector<std::array<double, 2>>
      path_cm;          ///< table coordinates; the higher values lie to the path's left
  bool closed = false;  ///< the last point joins the first, which is not repeated
};

/// All contours of one level. Lines run to the rectangle's edges (see lattice.h) and stop where a cell is
/// covered. Marching squares: Lorensen and Cline, "Marching Cubes", SIGGRAPH 1987, in two dimensions; a
/// saddle is settled by the mean of its four corners.
std::vector<Contour> contours_at(const Map& map, const Level& level);

/// The contours of all of levels_of(map), levels rising.
std::vector<Contour> contours_of(const Map& map);

}  // namespace fillside
