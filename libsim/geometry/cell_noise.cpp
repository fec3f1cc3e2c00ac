#include "libsim/geometry/cell_noise.h"

#include <algorithm>
#include <cmath>

#include "libsim/geometry/dealt.h"
#include "libsim/geometry/relief.h"

namespace fillside {
namespace {

Eigen::Vector3d point_in_cell(const Eigen::Array3i& cell, std::uint64_t seed) {
  std::uint64_t word = seed;
  for (int axis = 0; axis < 3; ++axis) word = mixed(word, static_cast<std::uint64_t>(cell[axis]));
  return cell.cast<double>().matrix() + Eigen::Vector3d(dealt(word, 0), dealt(word, 1), dealt(word, 2));
}

}  // namespace

CellDistances cell_noise(const Eigen::Vector3d& place, std::uint64_t seed) {
  const Eigen::Array3i middle = place.array().floor().cast<int>();
  double nearest2 = 1e30, second2 = 1e30;
  // Two cells each way: the second nearest point may lie beyond the next cell.
  for (int x = -2; x <= 2; ++x)
    for (int y = -2; y <= 2; ++y)
      for (int z = -2; z <= 2; ++z) {
        const Eigen::Array3i cell = middle + Eigen::Array3i(x, y, z);
        const double far2 = (point_in_cell(cell, seed) - place).squaredNorm();
        second2 = std::min(second2, std::max(nearest2, far2));
        nearest2 = std::min(nearest2, far2);
      }
  return {std::sqrt(nearest2), std::sqrt(second2)};
}

double crack_depth(const Point& place, double cell_m, double crack_m, std::uint64_t seed) {
  const CellDistances cells = cell_noise(place / cell_m, seed);
  return 1.0 - smooth_step(0.0, crack_m, (cells.second - cells.nearest) * cell_m);
}

}  // namespace fillside
