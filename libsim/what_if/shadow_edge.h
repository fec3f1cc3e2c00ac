// The shadow that a thing casts on the table: how soft its end is, and how far its full shadow reaches.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/key.h"
#include "libsim/view/softness.h"
#include "libsim/what_if/effort.h"

namespace fillside {

/// A line over a surface, from shadow into light; the receptors along it face `normal`.
struct EdgeLine {
  std::string name;
  Point from, to;
  Direction normal = {0, 0, 1};
  std::string stopped_by = {};  ///< what stands in its way; empty where it ends at the table's edge
};

/// Visibility of the key along the line, in cells; none where no key would arrive even unshadowed.
EdgeProfile read_profile(const Scene& scene, const Key& key, const EdgeLine& line, int cells,
                         const Effort& effort);

struct ShadowEdge {
  std::string name;
  std::optional<Estimate> width_mm;  ///< 10-90 %; nothing when it is not crossed on the line
  std::optional<Estimate> umbra_mm;  ///< from the line's start to where 1 % of the key comes into view
  double line_mm = 0.0;
  std::string stopped_by;  ///< the line's
};

/// Reads the line, and once more in finer steps where the edge is too narrow for them: hard edges down to a
/// fiftieth of a millimetre.
ShadowEdge read_edge(const Scene& scene, const Key& key, const EdgeLine& line, const Effort& effort);

/// For each thing that stands on the table (food, props, boards): the line from under its far side away from
/// the key, to the table's edge or to just short of what stands on the table before that.
std::vector<EdgeLine> shadow_lines(const Description& description, const Scene& scene, const Key& key);

}  // namespace fillside
