// Light that comes by way of the room changes slowly over a map, except close to things. In the cached mode
// it is measured in a coarse grid of cells only and filled in between them; close to things in every cell.
//
// How far a reading may be carried: Ward, Rubinstein, Clear, "A Ray Tracing Solution for Diffuse
// Interreflection", SIGGRAPH 1988, eq. 4: the change over a distance is bounded by that distance over the
// harmonic mean distance of what is seen.
#pragma once

#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/transport/measurement.h"

namespace fillside {

class CoarseGrid {
 public:
  /// `covered` by element: what nobody asks about, and what cannot be carried from.
  CoarseGrid(const Scene& scene, const MapPlane& plane, std::vector<bool> covered, int threads);

  const std::vector<bool>& covered() const { return covered_; }
  /// By element: nothing is to be measured there, because it is filled in or covered.
  const std::vector<bool>& left_out() const { return left_out_; }
  /// Share of the elements that are measured.
  double share_measured() const;
  bool is_filled_in(std::size_t element) const { return left_out_[element] && !covered_[element]; }
  /// Fills in what was left out, bilinearly between the four cells of the grid around.
  void fill(Measurement& measurement) const;

 private:
  std::size_t element(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }
  std::vector<int> nodes_along(int cells) const;
  void leave_out(const std::vector<bool>& carries);

  int columns_, rows_, step_;
  std::vector<int> node_columns_, node_rows_;
  std::vector<bool> covered_, left_out_;
};

}  // namespace fillside
