// The contact sheet of a series.
#pragma once

#include <string>
#include <vector>

#include "tools/series_answer.h"
#include "tools/series_set.h"
#include "tools/series_store.h"

namespace fillside::tools {

/// Throws SceneError when there are more pictures than a sheet holds, or they differ in proportions.
void check_pictures(const Arguments& arguments, const SeriesSets& sets);

/// Every set's picture at the exposure of the first, with its values and first figure below. Pictures that
/// the store has are not taken again.
Picture series_contact_sheet(const Arguments& arguments, const SeriesSets& sets, const SeriesAnswer& answer,
                             const std::optional<Anchor>& anchor, const SeriesStore& store);

}  // namespace fillside::tools
