// A plane measured to a wanted precision, for any of its maps.
#pragma once

#include <optional>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/sensor/map_plane.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"
#include "libsim/view/map_figures.h"
#include "libsim/what_if/audit.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/part_reading.h"

namespace fillside {

/// Maps have many cells and so fewer replicates than a meter: error bars with 7 degrees of freedom a cell.
inline constexpr int kMapReplicates = 8;

struct MapReading {
  Measurement measurement;
  std::vector<bool> covered;   ///< cells under a thing
  double reached_stops = 0.0;  ///< 95 % half width that the judged light of 95 % of the cells keeps
  bool reached = true;
  std::optional<Audit> audit;  ///< of the cached mode; nothing when every sample was walked to its end
};

/// The precision is that of each judged light: of all of it, or of what the wanted map is formed from.
MapReading read_map(const Scene& scene, const MapPlane& plane, const Effort& effort,
                    const EffortProgress& progress = {}, const Lights& judged = {all_light});

/// What maps of these figures are formed from: for fill the fill, and the key without shadows; for the others
/// all light.
Lights lights_of(const std::vector<MapFigure>& figures, const Key& key);

}  // namespace fillside
