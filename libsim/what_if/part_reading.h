// One instrument read part by part: windows, boards and the rest are integrals of their own, and the next
// samples go to the one in which a ray buys most precision.
#pragma once

#include <array>
#include <functional>
#include <vector>

#include "libsim/transport/coarse_grid.h"
#include "libsim/transport/measure.h"

namespace fillside {

/// A part of an element's light whose own precision is asked for; it adds up over parts of the reading.
using LightOf = std::function<Estimate(const Measurement&, std::size_t element)>;
/// Several, each as precise as the others.
using Lights = std::vector<LightOf>;
Estimate all_light(const Measurement& measurement, std::size_t element);

class PartReading {
 public:
  /// Takes the budget's samples of every part. With a grid (of a map, in the cached mode) all but straight
  /// light is measured there only, and nothing where the map is covered.
  PartReading(const Scene& scene, Sensor sensor, const Budget& first, const CoarseGrid* grid = nullptr,
              const Progress& progress = {}, Lights judged = {all_light});

  /// Doubles the samples of the part in which a ray buys most precision.
  void refine(const Progress& progress = {});
  /// Likely seconds that refine() will take: as long as that part took so far.
  double refining_s() const { return parts_[most_worthwhile()].spent_s; }
  /// False when no part gains by more samples: those it may have are used up, or what is left of its noise is
  /// the store's.
  bool can_refine() const;

  /// The light that does not come straight: boards and the rest.
  Measurement turned() const;
  /// The parts together.
  const Measurement& whole() const { return whole_; }
  /// Samples of each replicate of the part that had most.
  std::uint64_t most_samples() const;

 private:
  struct Part {
    Parts part;
    double cost_rays;  ///< of one sample, about
    Measurement mean;
    std::uint32_t samples = 0;
    double variance =
        0.0;  ///< of its judged light, relative to the whole's: all but one element in twenty keep it
    bool exhausted = false;
    double spent_s = 0.0;
  };
  void take(Part& part, std::uint32_t samples, const Progress& progress);
  void add_up();
  std::vector<double> relative_variances(const Measurement& part) const;
  std::size_t most_worthwhile() const;

  const Scene& scene_;
  Sensor sensor_;
  Budget budget_;
  const CoarseGrid* grid_;
  Lights judged_;
  std::vector<Part> parts_;
  Measurement whole_;
};

}  // namespace fillside
