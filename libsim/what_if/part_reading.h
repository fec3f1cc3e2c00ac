// One instrument read part by part: windows, boards and the rest are integrals of their own, and the next
// samples go to the one in which a ray buys most precision.
#pragma once

#include <array>

#include "libsim/transport/measure.h"

namespace fillside {

class PartReading {
 public:
  /// Takes the budget's samples of every part. `covered` (by element; may be empty) names what nobody asks
  /// about, so that no samples are spent for its sake.
  PartReading(const Scene& scene, Sensor sensor, const Budget& first, std::vector<bool> covered = {},
              const Progress& progress = {});

  /// Doubles the samples of the part in which a ray buys most precision.
  void refine(const Progress& progress = {});
  /// Likely seconds that refine() will take: as long as that part took so far.
  double refining_s() const { return parts_[most_worthwhile()].spent_s; }
  /// False when that part has had all the samples that the numbers allow.
  bool can_refine() const;

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
    double variance = 0.0;  ///< of the mean, relative to the whole, averaged over the elements
    double spent_s = 0.0;
  };
  void take(Part& part, std::uint32_t samples, const Progress& progress);
  void add_up();
  std::size_t most_worthwhile() const;

  const Scene& scene_;
  Sensor sensor_;
  Budget budget_;
  std::vector<bool> covered_;
  std::vector<Part> parts_;
  Measurement whole_;
};

}  // namespace fillside
