#include "libsim/transport/coarse_grid.h"

#include <algorithm>
#include <array>

#include "libsim/base/parallel.h"
#include "libsim/base/warp.h"
#include "libsim/geometry/ray_caster.h"

namespace fillside {
namespace {

constexpr double kWidest_m = 0.04;  ///< apart, the cells of the grid
constexpr int kWidest = 8;          ///< the same in cells of the map
constexpr std::uint32_t kLooks = 32;
constexpr std::uint64_t kLookSeed = 0x6c6f6f6bu;  ///< "look": no instrument's numbers
/// A reading is carried no farther than this share of the harmonic mean distance.
constexpr double kCarried = 0.3;

double longer_side_m(const MapPlane& plane) {
  return std::max(2.0 * plane.rectangle.half_u.norm() / plane.columns,
                  2.0 * plane.rectangle.half_v.norm() / plane.rows);
}

/// Cells from one cell of the grid to the next; 1 where the map itself is coarse.
int step_for(const MapPlane& plane) {
  int step = 1;
  while (2 * step <= kWidest && 2 * step * longer_side_m(plane) <= kWidest_m) step *= 2;
  return step;
}

/// How far off things are, as seen from the middle of a cell: the harmonic mean over directions by the
/// cosine.
double harmonic_mean_distance_m(const Scene& scene, const MapPlane& plane, std::size_t element) {
  const Frame frame = frame_around(plane.rectangle.normal());
  const std::uint32_t mask = plane.subject_there ? kEverything : kWithoutSubject;
  double sum_per_m = 0.0;
  for (std::uint32_t look = 0; look < kLooks; ++look) {
    const Numbers4 u = SampleNumbers(kLookSeed, element, 0, look).group(0);
    const Direction way = frame.to_world(draw_cosine_hemisphere(u[0], u[1]));
    if (const auto hit = scene.caster().first_hit(leaving(plane.middle_of(element), frame.normal, way), mask))
      sum_per_m += 1.0 / hit->distance_m;
  }
  return kLooks / sum_per_m;
}

/// Where a column or row lies among the grid's: the one before it, and how far on to the next.
struct Between {
  std::size_t before;
  float share;
};
Between between(const std::vector<int>& nodes, int at) {
  const auto after = std::max<std::ptrdiff_t>(1, std::ranges::upper_bound(nodes, at) - nodes.begin());
  const auto before = std::min(static_cast<std::size_t>(after - 1), nodes.size() - 2);
  const auto wide = static_cast<float>(nodes[before + 1] - nodes[before]);
  return {before, static_cast<float>(at - nodes[before]) / wide};
}

}  // namespace

CoarseGrid::CoarseGrid(const Scene& scene, const MapPlane& plane, std::vector<bool> covered, int threads)
    : columns_(plane.columns),
      rows_(plane.rows),
      step_(step_for(plane)),
      node_columns_(nodes_along(columns_)),
      node_rows_(nodes_along(rows_)),
      covered_(std::move(covered)),
      left_out_(covered_) {
  if (step_ == 1 || node_columns_.size() < 2 || node_rows_.size() < 2) return;
  const double carried_m = step_ * longer_side_m(plane);
  std::vector<char> far(node_columns_.size() * node_rows_.size());
  parallel_for(node_rows_.size(), threads, [&](std::size_t row) {
    for (std::size_t column = 0; column < node_columns_.size(); ++column) {
      const std::size_t node = element(node_columns_[column], node_rows_[row]);
      far[row * node_columns_.size() + column] =
          !covered_[node] && carried_m <= kCarried * harmonic_mean_distance_m(scene, plane, node);
    }
  });
  leave_out({far.begin(), far.end()});
}

/// Every so many cells, and the last.
std::vector<int> CoarseGrid::nodes_along(int cells) const {
  std::vector<int> nodes;
  for (int at = 0; at < cells - 1; at += step_) nodes.push_back(at);
  nodes.push_back(cells - 1);
  return nodes;
}

/// Leaves out what lies between four cells of the grid that all carry.
void CoarseGrid::leave_out(const std::vector<bool>& carries) {
  const auto node_carries = [&](std::size_t column, std::size_t row) {
    return static_cast<bool>(carries[row * node_columns_.size() + column]);
  };
  for (int row = 0; row < rows_; ++row)
    for (int column = 0; column < columns_; ++column) {
      const auto [i, x] = between(node_columns_, column);
      const auto [j, y] = between(node_rows_, row);
      const bool is_node = (x == 0.0f || x == 1.0f) && (y == 0.0f || y == 1.0f);
      if (!is_node && node_carries(i, j) && node_carries(i + 1, j) && node_carries(i, j + 1) &&
          node_carries(i + 1, j + 1))
        left_out_[element(column, row)] = true;
    }
}

double CoarseGrid::share_measured() const {
  return static_cast<double>(std::ranges::count(left_out_, false)) / static_cast<double>(left_out_.size());
}

void CoarseGrid::fill(Measurement& measurement) const {
  for (int row = 0; row < rows_; ++row)
    for (int column = 0; column < columns_; ++column) {
      if (!is_filled_in(element(column, row))) continue;
      const auto [i, x] = between(node_columns_, column);
      const auto [j, y] = between(node_rows_, row);
      const int left = node_columns_[i], right = node_columns_[i + 1], top = node_rows_[j],
                bottom = node_rows_[j + 1];
      measurement.mix(element(column, row), {{{element(left, top), (1.0f - x) * (1.0f - y)},
                                              {element(right, top), x * (1.0f - y)},
                                              {element(left, bottom), (1.0f - x) * y},
                                              {element(right, bottom), x * y}}});
    }
}

}  // namespace fillside
