// Bare sets with known answers, put together from parts, and meters to read them. Axes of the world: x right,
// y into the room, z up; the window lies in y = 0 and faces +y.
#pragma once

#include <array>
#include <string>

#include "libsim/geometry/panels.h"
#include "libsim/scene/scene.h"
#include "libsim/transport/measure.h"
#include "libsim/what_if/light_checks.h"

namespace fillside {

inline const Direction kFaceUp{0, 0, 1}, kFaceDown{0, 0, -1}, kFaceWindow{0, -1, 0}, kFaceAway{0, 1, 0};

/// The rectangle between two opposite corners whose sides run along the axes, its front toward an axis.
Rectangle level_rectangle(const Point& low, const Point& high, const Direction& faces);

/// 1.2 m x 1.2 m, its sill flush with the table.
Rectangle window_at_the_table();

/// Black surroundings and one bare opening with that outside in it.
SceneParts set_with_opening(const Outside& outside, const Rectangle& opening);

void add_checked_board(SceneParts& parts, const Rectangle& rectangle, const Material& material);
void add_checked_wall(SceneParts& parts, const Mesh& mesh, const Material& material);
void add_checked_panel(SceneParts& parts, const Rectangle& rectangle, double luminance, double albedo);

/// The six faces of a box from the origin, seen from inside: floor, ceiling, y = 0, y = far, x = 0, x = far.
std::array<Rectangle, 6> faces_within(const Point& far);
/// The same as one mesh, with a hole where an opening or panel lies in a face.
Mesh walls_around(const Point& far, const Rectangle& hole);

/// All that arrives at a flat meter, lx.
Estimate flat_reading(const Scene& scene, const Point& at, const Direction& faces, std::uint32_t samples,
                      const LightCheckEffort& effort);
/// The part of it that came by way of something.
Estimate turned_reading(const Scene& scene, const Point& at, const Direction& faces, std::uint32_t samples,
                        const LightCheckEffort& effort);
Measurement measured(const Scene& scene, const Sensor& sensor, std::uint32_t samples,
                     const LightCheckEffort& effort);
/// What nothing turned on its way.
Estimate straight_of(const Measurement& measurement);

}  // namespace fillside
