// A furnished room with a bit of everything: two windows (one glazed, one curtained), table, white, black and
// mirror boards, a cloth, a hanging pane. It may be stretched, turned, moved or seen in a mirror.
#pragma once

#include "libsim/base/cases.h"
#include "tests/closed_form/sets.h"

namespace fillside::tests {

inline const Point kDishInRoom{1.8, 1.3, 0.75};
inline const Point kFarRoomCorner{4, 3.2, 2.6};

/// What may be varied.
struct Furnishing {
  double outside_luminance = 2000.0;
  double wall_albedo = 0.5;
  Matte white{grey(0.9)}, black{grey(0.03)};
  bool first_window_lit = true, second_window_lit = true;  ///< an unlit one is covered in black
  bool with_white = true, with_black = true;
};

inline Opening room_window(const Rectangle& rectangle, const ClearPane& glass, bool lit) {
  Opening opening;
  opening.rectangle = rectangle;
  opening.glass = glass;
  if (!lit) opening.cover = {1.0, 1.0, 1.0, 1.0, Matte{grey(0.0)}};
  return opening;
}

inline SceneParts furnished_room(const Furnishing& wish = {}) {
  SceneParts parts;
  parts.outside = even_outside(candela_per_m2(wish.outside_luminance));
  const Rectangle first = sheet({0.9, 0, 0.9}, {2.3, 0, 2.1}, kAway),
                  second = sheet({0, 1, 1}, {0, 2, 2}, kRight);
  parts.add_emitter("first window", room_window(first, {.panes = 1}, wish.first_window_lit));
  Opening curtained = room_window(second, {.panes = 0}, wish.second_window_lit);
  curtained.curtain = ThinCloth{grey(0.2), grey(0.3), grey(0.4)};
  parts.add_emitter("second window", curtained);
  add_wall(parts, box_around(kFarRoomCorner, {first, second}), Matte{grey(wish.wall_albedo)}, "room");
  add_wall(parts, mesh_of(sheet({1.2, 0.8, 0.7}, {2.6, 1.9, 0.7}, kUp)), Matte{{0.5, 0.35, 0.2}}, "table");
  if (wish.with_white)
    add_board(parts, sheet({1.5, 1.65, 0.71}, {2.1, 1.65, 1.1}, kToWindow), wish.white, "white");
  if (wish.with_black)
    add_board(parts, sheet({1.4, 1.1, 0.71}, {1.4, 1.6, 1.0}, kRight), wish.black, "black");
  add_board(parts, sheet({2.3, 1.1, 0.71}, {2.3, 1.5, 1.0}, kLeft), Foil{grey(0.85), 1.0, 0.0}, "mirror");
  add_board(parts, sheet({1.3, 0.6, 0.9}, {1.7, 0.6, 1.5}, kAway), ThinCloth{grey(0.2), grey(0.3), grey(0.4)},
            "cloth");
  add_board(parts, sheet({1.9, 0.7, 0.75}, {2.4, 0.7, 1.6}, kAway), ClearPane{}, "pane");
  return parts;
}

/// A ball over the table and a disc under the ceiling that looks down aslant, both warm.
inline void add_two_lamps(SceneParts& parts) {
  const Rgb warm{900.0, 700.0, 300.0};
  parts.add_emitter("ball", LampSphere{{{1.1, 1.5, 1.3}, 0.12}, warm, Matte{grey(0.6)}});
  parts.add_emitter(
      "disc", LampDisc{{{3.0, 2.2, 2.2}, Direction(-1, -0.5, -1).normalized(), 0.2}, warm, Matte{grey(0.6)}});
}

/// Every place p of the set at `placement` p; mirroring placements keep the fronts of windows and lamps in
/// the room.
inline SceneParts moved(SceneParts parts, const Placement& placement) {
  const bool mirroring = placement.linear().determinant() < 0.0;
  const auto move = [&](Rectangle& r) {
    r.centre = placement * r.centre;
    r.half_u = placement.linear() * r.half_u * (mirroring ? -1.0 : 1.0);
    r.half_v = placement.linear() * r.half_v;
  };
  for (Surface& surface : parts.surfaces)
    for (Point& corner : surface.mesh.corners) corner = placement * corner;
  const auto move_lamp = Cases{[&](LampDisc& lamp) {
                                 lamp.disc.centre = placement * lamp.disc.centre;
                                 lamp.disc.normal = placement.linear() * lamp.disc.normal;
                               },
                               [&](LampSphere& lamp) { lamp.sphere.centre = placement * lamp.sphere.centre; },
                               [&](auto& flat) { move(flat.rectangle); }};
  for (Emitter& emitter : parts.emitters) std::visit(move_lamp, emitter.kind);
  for (Target& target : parts.targets) move(target.rectangle);
  return parts;
}

}  // namespace fillside::tests
