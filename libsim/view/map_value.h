// Reading a map between its cell centres.
#pragma once

#include <optional>

#include "libsim/view/map.h"

namespace fillside {

/// The value at a place inside the rectangle, bilinear on the map's lattice (see lattice.h); nothing where
/// the nearer half of it is covered.
std::optional<double> value_at(const Map& map, double x_cm, double y_cm);

}  // namespace fillside
