// The innermost loop of every measurement: the mean over the samples of one element of an instrument.
#pragma once

#include <span>
#include <vector>

#include "libsim/base/sample_numbers.h"
#include "libsim/transport/attribution.h"
#include "libsim/transport/gather.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

/// Takes element after element of an instrument, for one thread.
class ElementMeans {
 public:
  /// Keeps the sensor by reference. Rows by patch are not for a camera.
  ElementMeans(const Scene& scene, const Sensor& sensor, const Budget& budget, RowsBy rows = RowsBy::source);

  /// The means over the budget's samples of one element, for each of its replicates.
  RefusedSamples take(std::size_t element);
  /// Of the budget's first replicate and those after it, until the next take.
  std::span<const Ledger> by_replicate() const { return means_; }

 private:
  void take_few(std::size_t element, std::uint32_t first_sample, std::uint32_t count);

  const Sensor& sensor_;
  Budget budget_;
  Gatherer gatherer_;
  std::vector<Ledger> means_;
};

struct MeansOf {
  std::size_t element;
  int replicate;  ///< counted from the budget's first
};

/// The numbers of its first sample, which those who follow the same rays for another purpose need too.
SampleNumbers numbers_at(const Sensor& sensor, const Budget& budget, const MeansOf& of);

/// The ray of one sample of a pixel.
Ray camera_ray(const Camera& camera, std::size_t pixel, const SampleNumbers& numbers);

}  // namespace fillside
