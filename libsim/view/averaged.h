// A map with its grain rubbed out, for lines that should not follow every grain.
#pragma once

#include "libsim/view/map.h"

namespace fillside {

/// The map with each value averaged over its neighbours (1-2-1 along rows, then along columns), `passes`
/// times: a Gaussian whose standard deviation is sqrt(passes / 2) cells. Straight ramps stay as they are, up
/// to the edges and up to covered cells: where a neighbour on one side is missing, the value keeps to itself.
/// Covered cells stay so.
Map averaged(Map map, int passes);

}  // namespace fillside
