// All sets of a series, opened and checked before the first is measured.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/what_if/series.h"
#include "tools/arguments.h"

namespace fillside::tools {

struct SeriesSets {
  std::vector<SeriesPoint> points;        ///< in the order of points_of: all, or those of the shard
  std::vector<Description> descriptions;  ///< one a point
  Description first;                      ///< of the series' first point, whoever measures it
  std::optional<Description> as_written;  ///< without any of the values; nothing when it is faulty so
  std::vector<SeriesFigure> figures;
};

/// Throws SceneError with the faults of all values together: of keys and values, placed at --vary, and of
/// figures that a set does not have. A shard answers for its own values; when shards are merged, only the
/// first set is built, for they have been asked.
SeriesSets open_series(const Arguments& arguments);

/// "15 cm", "A3, 20 cm": a point's values.
std::string point_name(const std::vector<SeriesAxis>& axes, const SeriesPoint& point);

}  // namespace fillside::tools
