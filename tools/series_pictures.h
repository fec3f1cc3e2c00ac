// The contact sheet of a series.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/view/exposure.h"
#include "tools/series_answer.h"
#include "tools/series_set.h"
#include "tools/series_store.h"

namespace fillside::tools {

/// Throws SceneError when there are more pictures than a sheet holds, or they differ in proportions.
void check_pictures(const Arguments& arguments, const SeriesSets& sets);

struct SeriesPictures {
  std::vector<Picture> pictures;  ///< one a point
  Settings settings;              ///< that all of them were taken with
  Effort effort;
};
/// Every set's picture at the exposure of one of them. Pictures that the store has are not taken again.
SeriesPictures series_pictures(const Arguments& arguments, const SeriesSets& sets, const Series& series,
                               const Description& exposed_for, const std::optional<Anchor>& anchor,
                               const SeriesStore& store);

/// How many side by side show two keys as rows and columns; 0: as the sheet likes.
int contact_columns(const Series& series);

/// Every set's picture at the exposure of the first, with its values and first figure below. Pictures that
/// the store has are not taken again.
Picture series_contact_sheet(const Arguments& arguments, const SeriesSets& sets, const SeriesAnswer& answer,
                             const std::optional<Anchor>& anchor, const SeriesStore& store);

}  // namespace fillside::tools
