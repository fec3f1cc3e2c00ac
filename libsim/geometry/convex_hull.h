// The outline of a cloud of points in a plane.
#pragma once

#include <array>
#include <vector>

namespace fillside {

using FlatPath = std::vector<std::array<double, 2>>;

/// Andrew's monotone chain: A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions",
/// Information Processing Letters 9(5), 1979. Anticlockwise; points on a side are left out.
FlatPath convex_hull(FlatPath points);

}  // namespace fillside
