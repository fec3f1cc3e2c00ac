// The innermost loop of every measurement: the mean over the samples of one element of an instrument.
#pragma once

#include "libsim/transport/attribution.h"
#include "libsim/transport/measure.h"
#include "libsim/transport/source_rows.h"

namespace fillside {

struct MeansOf {
  std::size_t element;
  int replicate;  ///< counted from the budget's first
};

/// Fills the ledger with the means over the budget's samples of one element and replicate. Rows by patch are
/// not for a camera.
RefusedSamples take_means(const Scene& scene, const Sensor& sensor, const Budget& budget, const MeansOf& of,
                          Ledger& means, RowsBy rows = RowsBy::source);

}  // namespace fillside
