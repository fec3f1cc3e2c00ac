// How far a line goes before it meets something solid.
#pragma once

#include <string>

#include "libsim/scene/scene.h"

namespace fillside {

struct ClearWay {
  double length_m = 0.0;
  std::string stopped_by;  ///< the name of what stands there; empty where the line goes all its way
};
/// From a point that way, at most `longest_m`; panes and cloths do not stop it.
ClearWay clear_way(const Scene& scene, const Point& from, const Direction& along, double longest_m);

}  // namespace fillside
