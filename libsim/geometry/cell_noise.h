// Cells around scattered points: crackled crust, split cookies, the holes of a crumb.
#pragma once

#include <cstdint>

#include "libsim/base/space.h"

namespace fillside {

/// Distances to the nearest and second nearest of points scattered one to each unit cell. Their difference is
/// 0 on the borders of the cells. Worley, "A Cellular Texture Basis Function", SIGGRAPH 1996, section 2
/// (F1, F2), with one point in every cell.
struct CellDistances {
  double nearest, second;
};
CellDistances cell_noise(const Eigen::Vector3d& place, std::uint64_t seed);

/// Depth 0..1 of cracks along the borders of cells `cell_m` across: 1 on a border, 0 from `crack_m` off it.
double crack_depth(const Point& place, double cell_m, double crack_m, std::uint64_t seed);

}  // namespace fillside
