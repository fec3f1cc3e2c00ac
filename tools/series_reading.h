// The figures of a series, measured set by set.
#pragma once

#include <optional>
#include <vector>

#include "libsim/what_if/series.h"
#include "tools/series_set.h"
#include "tools/series_store.h"

namespace fillside::tools {

/// Of the scene as it was written: that is where the reading was taken. Nothing when the anchor is varied.
std::optional<Anchor> anchor_of_series(const Arguments& arguments, const SeriesSets& sets,
                                       const Effort& effort);

/// The points of this run: measures what the store does not have; says how much of it there was.
std::vector<SeriesPoint> read_points(const Arguments& arguments, const SeriesSets& sets,
                                     const std::optional<Anchor>& anchor, const Effort& effort,
                                     const SeriesStore& store);

}  // namespace fillside::tools
