// From a photographer's words (clock, distance, lean) to places in space. World axes: the dish stands on the
// origin, x right, y away from the camera, z up; the floor lies at -table height.
#pragma once

#include <array>
#include <optional>

#include "libsim/geometry/rectangle.h"
#include "libsim/scene/description.h"

namespace fillside {

/// One wall of the room as seen from the dish.
struct WallPlace {
  Direction to_wall;       ///< horizontal, square to the wall
  double distance_m;       ///< from the dish, square to the wall
  Direction right;         ///< to the right as one faces it
  double left_m, right_m;  ///< how far it reaches from the dish's foot on it; left_m is negative to the left
  Rectangle rectangle;     ///< whole wall, front to the room
};

/// The room as a box around the dish. Walls in the order: the first window's, right of it, opposite, left.
struct RoomPlace {
  std::array<WallPlace, 4> walls;
  double floor_m, ceiling_m;  ///< heights
  Rectangle floor, ceiling;

  bool contains(const Point& point) const;
};

RoomPlace place_room(const Description& description);

/// Size of the opening, the stock size's where it is left out.
struct OpeningSize {
  double width_m, height_m, sill_m;
};
OpeningSize opening_size(const WindowSection& window);

/// How many panes its glass has, 0 to 3.
int pane_count(const WindowSection& window);

/// Which wall a window is in: the one whose direction is nearest to its clock position.
std::size_t wall_of(const WindowSection& window, const RoomPlace& room);
/// The opening in its wall, front to the room; the glass lies the reveal's depth behind it.
Rectangle place_opening(const WindowSection& window, const RoomPlace& room);

/// The foot point of a thing; `missing` where the spot does not say. z counts from the table top.
Point place_spot(const Spot& spot, const Point& missing);

/// The table top as a closed box, its upper face at z = 0; its legs are left out.
Mesh place_table(const TableSection& table);

/// Height angle of the camera over what it looks at, and the direction from there to the lens.
double elevation_of(const CameraSection& camera);
Direction toward_camera(const CameraSection& camera);
/// What the camera looks at; `subject_top_m` is the height of the subject over the table, 0 without one.
Point camera_looks_at(const CameraSection& camera, double subject_top_m);
/// The dish's empty place, where a meter reads that says no other: half the subject's height up, at least 3
/// cm.
Point dish_place(double subject_top_m);
/// True when a spot is the dish's own, or says nothing.
bool is_at_the_dish(const Spot& spot);

/// How a board or frame stands: its front (the middle of its lower edge at the spot), leaned.
struct Standing {
  double width_m, height_m;
  Spot spot;
  Angle lean;
  std::optional<Clock> faces;
  Length foot_gap;
  bool on_floor;
};
/// Size of a sheet by stock name or sides; nothing when neither is given.
std::optional<std::array<double, 2>> sheet_size(const std::string& sheet, std::optional<Length> width,
                                                std::optional<Length> height, bool upright);
Rectangle place_standing(const Standing& standing, double table_height_m);

/// The one front of a flat board, or the two wings of a folded one, hinge at the spot, opening to where it
/// faces.
std::vector<Rectangle> place_board(const BoardSection& board, double table_height_m);
Rectangle place_diffuser(const DiffuserSection& diffuser, double table_height_m);

}  // namespace fillside
