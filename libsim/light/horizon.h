// Height above the horizon and compass bearing, and the directions of the set that they mean.
#pragma once

#include "libsim/base/space.h"

namespace fillside {

/// How the set lies on the compass: the bearing of its y axis (away from the camera), clockwise from true
/// north.
struct Compass {
  double azimuth_of_y_rad = 0.0;  ///< 0: x points east and y north
};

/// Horizontal direction of that bearing (clockwise from true north).
Direction toward_azimuth(double azimuth_rad, Compass compass = {});
/// Direction of that altitude over that bearing.
Direction toward(double altitude_rad, double azimuth_rad, Compass compass = {});

double altitude_of(const Direction& direction);
/// 0 <= azimuth < 2 pi; 0 for straight up and down.
double azimuth_of(const Direction& direction, Compass compass = {});

/// An angle brought into 0 <= angle < 2 pi.
double full_turn(double angle_rad);

}  // namespace fillside
