// The place where light is received, and how much each direction counts there: a flat disc (cosine), a dome
// (cardioid), or a surface seen by the camera (its scattering toward the lens).
// To add one: a struct, and a case in each of the two verbs below.
#pragma once

#include <optional>
#include <variant>

#include "libsim/base/sample_numbers.h"
#include "libsim/matter/material.h"

namespace fillside {

/// Flat receptor: response cos+. Reads illuminance, lx.
struct FlatReceptor {};

/// Domed receptor: response (1 + cos) / 2 over the whole sphere; a frontal beam reads as on a flat receptor.
/// ISO 2720:1974, hemispherical receptor.
struct DomedReceptor {};

/// A widely scattering surface looked at from `to_viewer` (world, away from the surface): response scattering
/// x cos.
struct SeenSurface {
  Material material;
  Direction to_viewer = {0, 0, 1};
};

struct Receiver {
  Point position = Point::Zero();
  Direction normal = {0, 0, 1};  ///< the way a receptor faces; a surface's normal
  std::variant<FlatReceptor, DomedReceptor, SeenSurface> kind = FlatReceptor{};
};

/// Weight per steradian of radiance arriving from `to_source` (world).
Rgb response(const Receiver& receiver, const Direction& to_source);

struct DrawnResponse {
  Direction to_source;  ///< world
  Rgb weight;           ///< response / density
};
/// Draws a direction in proportion to the response, straight-through and mirror-like parts left out.
std::optional<DrawnResponse> draw_response(const Receiver& receiver, const Numbers4& u);

}  // namespace fillside
