// Several sets read side by side, so that what differs between them is known better than either.
#pragma once

#include <vector>

#include "libsim/what_if/set_reading.h"

namespace fillside {

/// A set that is read beside others.
struct SetBeside {
  const Description& description;
  const Scene& scene;
};

/// Readings themselves are needed no better than this to be told; their differences are what is asked for.
inline constexpr Stops kReadingBeside = stops(0.05);

struct SharedReading {
  std::vector<SetReading> sets;  ///< in the order given
  double reached_stops = 0.0;    ///< widest 95 % half width among the differences to the first set
  bool reached = true;
};

/// Reads all instruments of every set. Those that the first set has too take the same samples in all sets,
/// until every difference to the first set (of a reading, and of lit:shadow) is within the effort's precision
/// and every reading within that or kReadingBeside, whichever is wider. Sets that share an anchor are scaled
/// by the factor that it has in the first of them: one real reading tells of one sky, and that is kept.
SharedReading read_shared(const std::vector<SetBeside>& sets, const Effort& effort,
                          const EffortProgress& progress = {});

}  // namespace fillside
