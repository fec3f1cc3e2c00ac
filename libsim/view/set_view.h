// The set as a draughtsman sees it: from above, or level from one side, everything in cm and with the
// measures that a builder takes there.
#pragma once

#include <string>
#include <vector>

#include "libsim/geometry/convex_hull.h"
#include "libsim/scene/placed_set.h"

namespace fillside {

/// `six`: from 6 o'clock toward 12, right is right; `nine`: from 9 toward 3, the camera's side is on the
/// right.
enum class ViewFrom { above, six, nine };

struct SeenThing {
  enum class Kind {
    wall,
    opening,
    cover,
    curtain,
    table,
    prop,
    food,
    cloth,
    lamp,
    board,
    dark_board,
    axis,
    camera
  };
  Kind kind;
  std::string name;
  FlatPath path_cm;
  bool closed = true;
};

/// A dimension line between two points, with its length or what else is to be said.
struct SeenMeasure {
  std::array<double, 2> from_cm, to_cm;
  std::string text;
};

struct SetView {
  ViewFrom from;
  std::vector<SeenThing> things;  ///< what lies behind comes first
  std::vector<SeenMeasure> measures;
  std::vector<std::string> not_drawn = {};  ///< further windows that are too far off: "side, 187.3 cm off"
  double left_cm = 0.0, right_cm = 0.0, low_cm = 0.0, high_cm = 0.0;  ///< what must be on the drawing
};

/// A further window whose wall is farther off would only make all else small.
inline constexpr double kFarthestDrawn_m = 1.5;

/// The cross is at 0, 0; from a side the table top is at height 0. A thing's heights are measured in the side
/// view that sees it nearer to edge-on. Where nothing stands on the floor the side views end shortly below
/// the table.
SetView view_of_set(const PlacedSet& set, ViewFrom from);

}  // namespace fillside
