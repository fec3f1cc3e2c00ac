// How far the cached mode is off: some elements of a map or picture, drawn at random, are measured again with
// whole walks and the same numbers, and the two are compared.
#pragma once

#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/transport/coarse_grid.h"
#include "libsim/transport/measure.h"

namespace fillside {

struct Audit {
  Estimate mean_bias;  ///< cached less unbiased, as a share of the unbiased mean over the points
  /// Root mean square over single points, same share, noise taken out: no more than this with 97.5 % of
  /// confidence. It speaks for points alike, not for the worst corner of a map.
  double point_bias_at_most = 0.0;
  int points = 0;
};

/// The part of a map's light that was filled in between the cells of a grid.
struct FilledIn {
  const CoarseGrid& grid;
  Measurement turned;  ///< boards and the rest
};

/// Compares at up to kAuditPoints of the elements of `reading`, which the sensor gave, that are asked about
/// (`covered` false or empty). The budget names the kept light; its samples and replicates are set here.
Audit audit_of(const Scene& scene, const Sensor& sensor, const std::vector<bool>& covered, Budget budget,
               const Measurement& reading, const FilledIn* filled = nullptr);

inline constexpr int kAuditPoints = 256;

}  // namespace fillside
