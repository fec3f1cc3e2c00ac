// The files of fillside compare: difference maps, and the pictures side by side.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "libsim/view/map_figures.h"
#include "libsim/what_if/shared_reading.h"
#include "tools/compared_sets.h"

namespace fillside::tools {

/// The figures of --map. Throws SceneError for those that are no maps or have no difference, and for a plane
/// that a set does not have.
std::vector<MapFigure> wanted_differences(const Arguments& arguments, const std::vector<ComparedSet>& sets);

/// One difference map for each figure and each set after the first, all on the first set's plane, as
/// STEM-NAME-FIGURE-change.png and .csv. Tells of each; gives them for programs.
nlohmann::ordered_json write_differences(const Arguments& arguments, const std::vector<ComparedSet>& sets,
                                         const SharedReading& reading, const std::vector<MapFigure>& figures);

/// STEM-side_by_side.png: every set's picture at the exposure of the first.
nlohmann::ordered_json write_side_by_side(const Arguments& arguments, const std::vector<ComparedSet>& sets,
                                          const SharedReading& reading);

}  // namespace fillside::tools
