#include "libsim/geometry/slab.h"

#include <array>
#include <cassert>
#include <limits>

namespace fillside {
namespace {

constexpr std::uint32_t kUnused = std::numeric_limits<std::uint32_t>::max();

/// Hands out the corners of both faces, each once.
class SlabBuilder {
 public:
  explicit SlabBuilder(const SlabGrid& grid)
      : grid_(grid), first_(2 * static_cast<std::size_t>((grid.columns + 1) * (grid.rows + 1)), kUnused) {}

  void add_cell(int i, int j);
  Mesh mesh;

 private:
  bool has(int i, int j) const {
    return i >= 0 && j >= 0 && i < grid_.columns && j < grid_.rows && grid_.has(i, j);
  }
  std::uint32_t corner(int i, int j, bool upper);
  void add_quad(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    mesh.triangles.push_back({a, b, c});
    mesh.triangles.push_back({a, c, d});
  }

  const SlabGrid& grid_;
  std::vector<std::uint32_t> first_;
};

std::uint32_t SlabBuilder::corner(int i, int j, bool upper) {
  std::uint32_t& index = first_[2 * static_cast<std::size_t>(j * (grid_.columns + 1) + i) + (upper ? 1 : 0)];
  if (index == kUnused) {
    index = static_cast<std::uint32_t>(mesh.corners.size());
    mesh.corners.push_back(upper ? grid_.upper(i, j) : grid_.lower(i, j));
  }
  return index;
}

void SlabBuilder::add_cell(int i, int j) {
  const std::array<std::array<int, 2>, 4> around{{{i, j}, {i + 1, j}, {i + 1, j + 1}, {i, j + 1}}};
  const std::array<bool, 4> has_neighbour{has(i, j - 1), has(i + 1, j), has(i, j + 1), has(i - 1, j)};
  std::array<std::uint32_t, 4> up{}, down{};
  for (std::size_t k = 0; k < 4; ++k) {
    up[k] = corner(around[k][0], around[k][1], true);
    down[k] = corner(around[k][0], around[k][1], false);
  }
  add_quad(up[0], up[1], up[2], up[3]);
  add_quad(down[3], down[2], down[1], down[0]);
  for (std::size_t k = 0; k < 4; ++k)
    if (!has_neighbour[k]) add_quad(down[k], down[(k + 1) % 4], up[(k + 1) % 4], up[k]);
}

}  // namespace

Mesh slab(const SlabGrid& grid) {
  assert(grid.columns > 0 && grid.rows > 0);
  SlabBuilder builder(grid);
  for (int j = 0; j < grid.rows; ++j)
    for (int i = 0; i < grid.columns; ++i)
      if (grid.has(i, j)) builder.add_cell(i, j);
  return std::move(builder.mesh);
}

}  // namespace fillside
