#include "libsim/geometry/seams.h"

#include <algorithm>
#include <numeric>

namespace fillside {

std::vector<std::uint32_t> first_at_same_place(std::span<const Point> corners) {
  const auto before = [&](std::uint32_t i, std::uint32_t j) {
    const Point &a = corners[i], &b = corners[j];
    for (int axis = 0; axis < 3; ++axis)
      if (a[axis] != b[axis]) return a[axis] < b[axis];
    return i < j;
  };
  std::vector<std::uint32_t> order(corners.size()), first(corners.size());
  std::iota(order.begin(), order.end(), 0U);
  std::ranges::sort(order, before);
  for (std::size_t k = 0; k < order.size(); ++k) {
    const bool same = k > 0 && corners[order[k]] == corners[order[k - 1]];
    first[order[k]] = same ? first[order[k - 1]] : order[k];
  }
  return first;
}

std::size_t open_edge_count(std::span<const Triangle> triangles) {
  // An edge as one number, low corner first; the last bit tells the direction.
  struct Edge {
    std::uint32_t low, high;
    bool reversed;
    auto operator<=>(const Edge&) const = default;
  };
  std::vector<Edge> edges;
  edges.reserve(3 * triangles.size());
  for (const Triangle& t : triangles)
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t from = t[i], to = t[(i + 1) % 3];
      edges.push_back({std::min(from, to), std::max(from, to), from > to});
    }
  std::ranges::sort(edges);
  std::size_t open = 0;
  for (std::size_t start = 0, end = 0; start < edges.size(); start = end) {
    while (end < edges.size() && edges[end].low == edges[start].low && edges[end].high == edges[start].high)
      ++end;
    const bool pair = end - start == 2 && !edges[start].reversed && edges[start + 1].reversed;
    if (!pair) open += end - start;
  }
  return open;
}

}  // namespace fillside
