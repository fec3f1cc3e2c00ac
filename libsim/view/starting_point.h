// Which settings to start with, and which others give the same picture brightness.
#pragma once

#include <span>
#include <vector>

#include "libsim/base/quantity.h"
#include "libsim/view/exposure.h"

namespace fillside {

/// The wished aperture, two ways: at the lowest ISO speed, and by hand at the lowest that allows it.
struct StartingPoint {
  Settings at_base_iso;         ///< from a tripod, unless `steady_by_hand`
  bool steady_by_hand = false;  ///< its shutter is no slower than a hand holds
  Settings by_hand;             ///< the same aperture; the same settings when those are steady
  Duration slowest_by_hand;
};
/// `ev100`: what the meter says, the close-focus loss already taken off.
StartingPoint starting_point(double ev100, FNumber aperture, Duration slowest_by_hand, int base_iso = 100);

/// One setting for each aperture and ISO speed, apertures outermost: all alike to a third of a stop.
std::vector<Settings> equivalents(double ev100, std::span<const FNumber> apertures,
                                  std::span<const int> isos);

/// Whole stops of the aperture from at most two wider to two narrower than the given one, f/1 to f/64.
std::vector<FNumber> apertures_around(FNumber aperture);

}  // namespace fillside
