// One mesh of what was put together from pieces.
#pragma once

#include <algorithm>
#include <vector>

#include "libsim/geometry/mesh.h"

namespace fillside::tests {

/// Corners within a micrometre made one, as a modeller would weld them.
inline Mesh welded(const Mesh& mesh) {
  Mesh result;
  std::vector<std::uint32_t> now(mesh.corners.size());
  for (std::size_t i = 0; i < mesh.corners.size(); ++i) {
    const auto same = std::ranges::find_if(
        result.corners, [&](const Point& p) { return (p - mesh.corners[i]).norm() < 1e-6; });
    now[i] = static_cast<std::uint32_t>(same - result.corners.begin());
    if (same == result.corners.end()) result.corners.push_back(mesh.corners[i]);
  }
  for (const Triangle& t : mesh.triangles) result.triangles.push_back({now[t[0]], now[t[1]], now[t[2]]});
  return result;
}

}  // namespace fillside::tests
