// A window: a hole in a wall through which the outside shines, with glass, glazing bars, a cover and a
// curtain in it, all thin and in one plane, which may lie a reveal's depth behind the wall. Daylight through
// it is evaluated ray by ray; the curtain, lit from outside evenly, is the area light that it is.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "libsim/geometry/mesh.h"
#include "libsim/geometry/rectangle.h"
#include "libsim/light/outside.h"
#include "libsim/matter/material.h"

namespace fillside {

/// Edges of the clear part of the opening, in the rectangle's own coordinates -1..1, and the bars across it.
struct OpeningCover {
  double left = -1.0, right = 1.0, bottom = -1.0, top = 1.0;
  Matte material{grey(0.05)};
};
struct GlazingBars {
  int across = 0, up = 0;
  double width_m = 0.025;
  Matte material{grey(0.8)};
};

struct Opening {
  Rectangle rectangle;    ///< front faces the room; where the glass is
  double reveal_m = 0.0;  ///< from there to the room's side of the wall
  double dirt = 0.0;      ///< share lost on the glass's outer side
  ClearPane glass{.index = 1.52, .absorption = 0.0, .panes = 0};
  std::optional<ThinCloth> curtain;
  OpeningCover cover;
  GlazingBars bars;
  /// Radiance of the curtain's room side by the light of each part of the outside; see lit_curtain.
  std::array<Rgb, kMostOutsideParts> curtain_radiance{grey(0), grey(0), grey(0), grey(0)};
};

/// The part of the rectangle that the cover leaves clear: nothing shines outside it.
Rectangle clear_part(const Opening& opening);

/// True when the room's side of the wall stands between a point of the glass and a place in the room.
bool hidden_by_reveal(const Opening& opening, const Point& on_glass, const Point& seen_from);

/// The four faces between the glass and the room's side of the wall: sill, jambs and head, looking at each
/// other.
Mesh mesh_of_reveal(const Opening& opening);

/// Fills curtain_radiance: illuminance on the cloth through the glass (quadrature over the outer hemisphere),
/// less the bars' share of the opening, raised by what goes to and fro between cloth and glass.
void light_curtain(Opening& opening, const Outside& outside);

/// What shines from one point of a source toward the room.
struct Emission {
  std::array<Rgb, kMostOutsideParts> straight{grey(0), grey(0), grey(0), grey(0)};  ///< by part
  std::array<Rgb, kMostOutsideParts> curtain{grey(0), grey(0), grey(0), grey(0)};
};

/// Radiance from a point of the opening, seen in direction `outward` (from the room to the outside).
Emission emission_of(const Opening& opening, const Outside& outside, const Point& point,
                     const Direction& outward);

/// What room light meets at that point: cover, bar, curtain or glass. Nothing for a bare hole.
std::optional<Material> room_face(const Opening& opening, const Point& point);

/// True where the curtain is what room light meets.
bool is_curtain_at(const Opening& opening, const Point& point);

}  // namespace fillside
