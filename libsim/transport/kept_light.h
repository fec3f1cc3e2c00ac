// The cached mode's store: what every cell of the matte surfaces sends out, by source, measured once with
// unbiased walks and then looked up where a walk would go on. Each replicate has a store of its own, so that
// the store's noise shows in the error bars; what they do not show is that a cell is taken as evenly bright.
// That is small because a cell is never looked up from near by (there the walk goes on), and is audited.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "libsim/transport/surface_cells.h"

namespace fillside {

struct KeepingBudget {
  std::uint32_t samples = 16;  ///< per cell and replicate
  int replicates = 8;
  std::uint64_t seed = 1;
  int threads = 0;
};

class KeptLight {
 public:
  /// Measures all cells of what there is under the mask. `progress` is told the share done.
  KeptLight(const Scene& scene, std::uint32_t mask, const KeepingBudget& budget,
            const std::function<void(double)>& progress = {});

  const SurfaceCells& cells() const { return cells_; }
  /// Samples that gave no finite number and were left out.
  std::uint64_t refused() const { return refused_; }
  std::uint32_t mask() const { return mask_; }
  int replicates() const { return replicates_; }

  /// Adds weight x what the cell sends out to radiance[source].
  void add(int replicate, std::uint32_t cell, const Rgb& weight, std::span<Rgb> radiance) const {
    const float* rgb = &radiance_[(static_cast<std::size_t>(replicate) * cells_.count() + cell) * stride_];
    for (Rgb& each : radiance) {
      each += weight * Rgb(rgb[0], rgb[1], rgb[2]);
      rgb += 3;
    }
  }

 private:
  SurfaceCells cells_;
  std::uint32_t mask_;
  int replicates_;
  std::size_t stride_;           ///< numbers of one cell: sources x channels
  std::vector<float> radiance_;  ///< [replicate][cell][source][rgb]
  std::uint64_t refused_ = 0;
};

/// One replicate of a store, as a walk uses it.
struct KeptReplicate {
  const KeptLight* kept = nullptr;
  int replicate = 0;

  /// The cell of what was hit from a distance; kNone where the walk must go on: no store, light that leaves
  /// different ways, the back of a face, or too near for one mean.
  std::uint32_t cell_of(const Hit& hit, const Direction& to_hit) const;
  /// The same for a place on a surface of few triangles, seen from a distance against its normal.
  std::uint32_t cell_at(const Scene& scene, std::size_t surface, const Point& point, double distance_m,
                        const Direction& to_point) const;
};

}  // namespace fillside
