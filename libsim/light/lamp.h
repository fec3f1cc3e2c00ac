// Lamps: even shapes that shine as matte paper would (Lambert), and how bright they are by what is known of
// them: the lumens on the box, a reading at a distance, or a luminance.
#pragma once

#include <variant>

#include "libsim/base/quantity.h"
#include "libsim/geometry/round_shapes.h"

namespace fillside {

/// A ball shines all round; a disc and a rectangle from their front.
using LampShape = std::variant<Sphere, Disc, Rectangle>;

Mesh mesh_of(const LampShape& shape);
Point centre_of(const LampShape& shape);
/// Of what shines, m2.
double shining_area_m2(const LampShape& shape);

/// E / (pi L) on the axis, on a surface square to it, at that distance from the ball's centre or the face's
/// middle; 0 within the ball. Howell, "A Catalog of Radiation Heat Transfer Configuration Factors": sphere
/// B-36 (here R2 / d2), disc B-12 (R2 / (R2 + d2)), rectangle B-3 with its corner on the axis, four times.
/// Numbers of the catalogue from memory.
double axial_factor(const LampShape& shape, double distance_m);

/// The luminance with which the shape gives that flux in all: flux / (pi area).
Luminance luminance_by_flux(const LampShape& shape, LuminousFlux flux);
/// The luminance with which it gives that illuminance on its axis; axial_factor must not be 0.
Luminance luminance_by_reading(const LampShape& shape, Illuminance reading, Length distance);

}  // namespace fillside
