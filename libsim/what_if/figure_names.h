// Figures of a set by name, for claims: which there are, and how each is read from what was measured.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/set_reading.h"

namespace fillside {

/// One set with its readings.
struct MeasuredSet {
  const Description& description;
  const Scene& scene;
  const SetReading& reading;
};

struct NamedFigure {
  std::string name;  ///< "subject.stops"
  std::string unit;  ///< "stops", "lx", "EV", "ratio", "mm", "%"
  /// Not a finite number where there is no light to form it from.
  std::function<Estimate(const MeasuredSet&, const Effort&)> value;
  std::vector<std::string> instruments = {};  ///< whose readings it is formed from; others need not be read
};

/// Every figure of the set, from the instruments that it has:
///   subject.lit_to_shadow, subject.stops          on the food; in its empty place when there is none
///   empty_spot.lit_to_shadow, empty_spot.stops
///   meter.NAME.lx, .key_lx, .fill_lx, .key_to_fill, .ev100    own meters, "dish up", "food shadow", ...
///   board.NAME.gain.METER                         stops that a board or diffuser adds at a meter
///   shadow.NAME.edge_mm, .full_mm                 a thing's shadow on the table: 10-90 % of the key, and how
///   far
///                                                 it is full
///   meter.NAME.stops_under                        stops less light than at the reference meter ([set]
///   reference)
///   dish.falloff                                  stops between the lightest and darkest of 9 level meters
///   over the dish, food away
///   dish.sunlit                                   % of the dish's empty place that the sun reaches straight
///   glare.THING.share                             % of a thing's most covered part over which a window or
///   lamp is mirrored so that it shows (food and props in the frame)
///   lit.THING.share                               % of what the camera sees of a thing that the key reaches
///   straight
///   plane.NAME.evenness                           stops between the lightest and darkest of 12 cells across,
///   food away
std::vector<NamedFigure> figures_of(const Description& description, const Scene& scene);

/// The names for a message: the five figures of a meter as one, "meter.dish up.lx|key_lx|...", and the gains
/// of a board as one, "board.fill.gain.METER".
std::vector<std::string> in_families(const std::vector<std::string>& names);

}  // namespace fillside
