// Whether and where a mesh is open.
#pragma once

#include <span>
#include <vector>

#include "libsim/geometry/mesh.h"

namespace fillside {

/// For each corner the first one at the same place (itself, mostly): corners written twice along a seam are
/// one.
std::vector<std::uint32_t> first_at_same_place(std::span<const Point> corners);

/// Edges of triangles without exactly one partner that runs the other way. 0 means watertight.
std::size_t open_edge_count(std::span<const Triangle> triangles);

}  // namespace fillside
