// The contact sheet of a series.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/what_if/fixed_exposure.h"
#include "tools/series_answer.h"
#include "tools/series_set.h"
#include "tools/series_store.h"

namespace fillside::tools {

/// Throws SceneError when there are more pictures than a sheet holds, or they differ in proportions.
void check_pictures(const Arguments& arguments);

/// How all pictures of a series are taken.
struct PictureRound {
  FixedExposure exposure;
  Effort effort;
  double light_factor = 1.0;
  std::string look;  ///< what kept pictures go by
};
/// At the exposure of one of the sets.
PictureRound picture_round(const Arguments& arguments, const SeriesSets& sets, const Description& exposed_for,
                           const std::optional<Anchor>& anchor);

/// One a point of this run. Pictures that the store has are not taken again.
std::vector<Picture> series_pictures(const Arguments& arguments, const SeriesSets& sets,
                                     const PictureRound& round, const SeriesStore& store);

/// How many side by side show two keys as rows and columns; 0: as the sheet likes.
int contact_columns(const Series& series);

/// The pictures with their values and first figure below.
Picture series_contact_sheet(const SeriesAnswer& answer, const PictureRound& round,
                             std::vector<Picture> pictures);

}  // namespace fillside::tools
