// The thin lens in figures: how large it pictures a thing, what is sharp, and what limits sharpness.
// Distances count from the lens to the thing; `confusion` is the blur on the sensor that still passes for a
// point. Ray, "Applied Photographic Optics", 3rd ed. (2002), chapters 5, 19 and 22 (from memory); each
// formula follows from 1/f = 1/s + 1/s' by similar triangles, and the tests derive them once more by tracing
// rays.
#pragma once

#include "libsim/base/quantity.h"

namespace fillside {

/// The lens as set: `aperture` is the true f-number, focal length : width of the lens.
struct LensSetting {
  Length focal_length;
  FNumber aperture;
  Length focus;  ///< of the plane that is sharp; more than the focal length
};

/// Size on the sensor : size of the thing, f / (s - f).
double magnification(const LensSetting& lens);

/// Light lost because the lens is racked out for a near thing: (1 + m)^2, as stops. For a lens whose pupils
/// are alike; one that changes its focal length instead loses less, or tells the camera's meter.
Stops close_focus_loss(double magnification);

/// Focused here, everything from half this distance to infinity is sharp: f^2 / (N c) + f.
Length hyperfocal(const LensSetting& lens, Length confusion);

/// From where to where a thing is sharp. `farthest` is infinite from the hyperfocal distance on.
struct SharpZone {
  Length nearest, farthest;
};
SharpZone sharp_zone(const LensSetting& lens, Length confusion);

/// Diameter, on the sensor, of the picture of a point at `distance`: f / N x f / (s - f) x |d - s| / d.
Length blur_circle(const LensSetting& lens, Length distance);

/// The least stopped-down setting that has all between two distances sharp, and where to focus for it: at
/// s = 2 n f / (n + f), which splits the blur evenly.
LensSetting covering(Length focal_length, Length nearest, Length farthest, Length confusion);

/// Diameter of the Airy disc on the sensor, 2.44 lambda N (1 + m), at 550 nm where the eye sees best:
/// stopping down below the f-number at which it reaches the circle of confusion costs sharpness everywhere.
Length airy_disc(const LensSetting& lens);

}  // namespace fillside
