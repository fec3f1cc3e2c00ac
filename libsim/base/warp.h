// From numbers in the unit square to points and directions, with the density of what is drawn.
#pragma once

#include "libsim/base/space.h"

namespace fillside {

struct PointInDisc {
  double x, y;
};

/// Uniform in the unit disc, without tearing the square. Shirley and Chiu, "A Low Distortion Map Between Disk
/// and Square", JGT 2(3), 1997 (two-branch form).
PointInDisc draw_disc(double u, double v);

/// Local direction about +z with density cos / pi. Malley's method: a uniform disc raised to the hemisphere.
Eigen::Vector3d draw_cosine_hemisphere(double u, double v);
double density_of_cosine_hemisphere_per_sr(double cosine);

/// Local direction over the whole sphere with density (1 + cos) / (4 pi): the cardioid of a domed receptor.
Eigen::Vector3d draw_cardioid(double u, double v);
double density_of_cardioid_per_sr(double cosine);

/// Barycentric weights of the second and third corner, uniform over a triangle's area.
/// Heitz, "A Low-Distortion Map Between Triangle and Square", 2019, listing 1.
PointInDisc draw_triangle(double u, double v);

}  // namespace fillside
