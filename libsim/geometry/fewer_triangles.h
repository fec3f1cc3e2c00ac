// A mesh with fewer triangles, for drawing; the only door to meshoptimizer. No light is ever measured on it.
#pragma once

#include "libsim/geometry/mesh.h"

namespace fillside {

/// The mesh with about `most` triangles, its form kept as far as that allows: edges are drawn together where
/// it shows least (Garland and Heckbert, "Surface Simplification Using Quadric Error Metrics", SIGGRAPH
/// 1997); corners that nothing uses any more are gone. A mesh that has no more than that comes back as it is.
Mesh with_fewer_triangles(const Mesh& mesh, std::size_t most);

}  // namespace fillside
