// The innermost loop of every measurement: the mean over the samples of one element of an instrument.
#pragma once

#include "libsim/base/sample_numbers.h"
#include "libsim/transport/attribution.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

struct MeansOf {
  std::size_t element;
  int replicate;  ///< counted from the budget's first
};

/// The numbers of its first sample, which those who follow the same rays for another purpose need too.
SampleNumbers numbers_at(const Sensor& sensor, const Budget& budget, const MeansOf& of);

/// The ray of one sample of a pixel.
Ray camera_ray(const Camera& camera, std::size_t pixel, const SampleNumbers& numbers);

/// Fills the ledger with the means over the budget's samples of one element and replicate. Rows by patch are
/// not for a camera.
RefusedSamples take_means(const Scene& scene, const Sensor& sensor, const Budget& budget, const MeansOf& of,
                          Ledger& means, RowsBy rows = RowsBy::source);

}  // namespace fillside
