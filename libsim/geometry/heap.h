// A heap of balls, poured one after the other: berries, beans, peas.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "libsim/geometry/round_shapes.h"

namespace fillside {

/// Pours balls of these radii onto the floor z = 0, within `reach_m` of the axis. Each falls at a few places
/// fixed by the seed, rolls downhill until three others or the floor hold it, and stays in the lowest place
/// it found; earlier ones do not give way. Between any two, and above the floor, lies at least `gap_m`.
/// Sequential "drop and roll" deposition: Visscher and Bolsterli, "Random Packing of Equal and Unequal
/// Spheres in Two and Three Dimensions", Nature 239, 1972.
std::vector<Sphere> heap_of(std::span<const double> radii_m, double reach_m, double gap_m,
                            std::uint64_t seed);

}  // namespace fillside
