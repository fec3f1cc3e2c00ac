// The cached mode's store: what every cell of the matte surfaces sends out, by source, worked out once and
// then looked up where a walk would go on. Each replicate has a store of its own, so that the store's noise
// shows in the error bars; what they do not show is that a cell is taken as evenly bright. That is small
// because a cell is never looked up from near by (there the walk goes on), and is audited.
//
// A cell's own samples end at cells as well, after one more turn. What they bring of their own and at which
// cells they end makes a linear system, solved by substitution: so the light's many turns cost no rays beyond
// these. Goral, Torrance, Greenberg, Battaile, "Modeling the Interaction of Light Between Diffuse
// Surfaces", SIGGRAPH 1984, eq. 7, with form factors by sampling.
#pragma once

#include <array>
#include <atomic>
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

/// A walk that ended at a cell, and how much of what that cell sends out it would have brought.
struct WalkEnd {
  std::uint32_t cell;
  std::array<float, 3> weight;
};

class KeptLight {
 public:
  /// Works out all cells of what there is under the mask. `progress` is told the share done.
  KeptLight(const Scene& scene, std::uint32_t mask, const KeepingBudget& budget,
            const std::function<void(double)>& progress = {});

  const SurfaceCells& cells() const { return cells_; }
  /// Samples that gave no finite number and were left out.
  std::uint64_t refused() const { return refused_; }
  std::uint32_t mask() const { return mask_; }
  int replicates() const { return replicates_; }

  /// What the cell sends out, by source: red, green and blue.
  std::span<const float> radiance(int replicate, std::uint32_t cell) const {
    return {radiance_.data() + (static_cast<std::size_t>(replicate) * cells_.count() + cell) * stride_,
            stride_};
  }
  /// Adds weight x what the cell sends out to radiance[source].
  void add(int replicate, std::uint32_t cell, const Rgb& weight, std::span<Rgb> radiance) const {
    const float* rgb = this->radiance(replicate, cell).data();
    for (Rgb& each : radiance) {
      each += weight * Rgb(rgb[0], rgb[1], rgb[2]);
      rgb += 3;
    }
  }

 private:
  std::span<float> radiance_of(int replicate, std::uint32_t cell) {
    return {radiance_.data() + (static_cast<std::size_t>(replicate) * cells_.count() + cell) * stride_,
            stride_};
  }
  /// Where the samples of every cell ended: those of cell c from first[c] to first[c + 1].
  struct Ends {
    std::vector<std::size_t> first;
    std::vector<WalkEnd> all;
  };
  Ends sample_cells(const Scene& scene, const KeepingBudget& budget, int replicate);
  void sample_cell(const Scene& scene, const KeepingBudget& budget, int replicate, std::uint32_t cell,
                   std::vector<WalkEnd>& ends);
  void exchange(int replicate, const Ends& ends);

  SurfaceCells cells_;
  std::uint32_t mask_;
  int replicates_;
  std::size_t stride_;           ///< numbers of one cell: sources x channels
  std::vector<float> radiance_;  ///< [replicate][cell][source][rgb]
  std::atomic<std::uint64_t> refused_ = 0;
};

/// One replicate of a store, as a walk uses it.
struct KeptReplicate {
  const KeptLight* kept = nullptr;
  int replicate = 0;
  std::vector<WalkEnd>* ends =
      nullptr;  ///< while the store is made: where walks end, in place of what is there
  /// How many turns a walk takes whatever the store knows.
  std::uint32_t turns_before_end = 0;

  /// The end of a walk at a cell: adds weight x what the cell sends out to radiance[source], or notes it.
  void end_at(std::uint32_t cell, const Rgb& weight, std::span<Rgb> radiance) const;
  /// The cell of what was hit from a distance; kNone where the walk must go on: no store, light that leaves
  /// different ways, the back of a face, or too near for one mean.
  std::uint32_t cell_of(const Hit& hit, const Direction& to_hit) const;
  /// The same for a place on a surface of few triangles, seen from a distance against its normal.
  std::uint32_t cell_at(const Scene& scene, std::size_t surface, const Point& point, double distance_m,
                        const Direction& to_point) const;
};

}  // namespace fillside
