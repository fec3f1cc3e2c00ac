// The answer of fillside series: as text, as JSON, as a table for spreadsheets, drawn.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "libsim/view/picture.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/series.h"

namespace fillside::tools {

struct SeriesAnswer {
  std::string title;  ///< of the scene
  Series series;
  std::vector<std::string> scene_hashes;  ///< one a point
  Effort effort;
};

/// "Citrus tart: distance of board near".
std::string series_title(const SeriesAnswer& answer);

std::string series_table(const SeriesAnswer& answer);
nlohmann::ordered_json series_json(const SeriesAnswer& answer);
std::string series_csv(const SeriesAnswer& answer);

/// A curve of all figures for one axis.
Picture series_curve(const SeriesAnswer& answer);
/// A field of one figure for two.
Picture series_grid(const SeriesAnswer& answer, std::size_t figure);

}  // namespace fillside::tools
