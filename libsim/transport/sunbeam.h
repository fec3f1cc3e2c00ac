// The sun's straight way to a place in the set.
#pragma once

#include "libsim/scene/scene.h"

namespace fillside {

/// Share of the sun's light that arrives straight from `to_sun` at a surface with that normal: through the
/// clear part of a window, its glass, the straight share of its curtain and the cloths on the way; 0 where
/// something solid stands. The set must stand before an even outside of radiance 1. `mask`: kEverything or
/// kWithoutSubject.
Rgb sunbeam(const Scene& scene, const Point& at, const Direction& normal, const Direction& to_sun,
            std::uint32_t mask);

/// Illuminance on the room side of a window's glass per unit on a plane that faces the sun.
double sun_behind_glass(const Emitter& emitter, const Direction& to_sun);

}  // namespace fillside
