// Which lamps that are on stand near something that is not made for heat.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"

namespace fillside {

/// Nearer than this wants a word. Common practice: an arm's length would be better; makers give their own
/// distances.
inline constexpr double kNearALamp_m = 0.30;

struct HeatedThing {
  std::string lamp, thing;  ///< as a message names them: lamp "bulb", board "fill", curtain of window "north"
  double distance_m;        ///< between their nearest points, to a few millimetres
};

/// Boards, diffusers and curtains within kNearALamp_m of a lamp that is on, in file order. The description
/// must have passed check().
std::vector<HeatedThing> things_near_lamps(const Description& description);

}  // namespace fillside
