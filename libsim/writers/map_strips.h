// Things beyond a map's edge (the window, as a rule): strips in the gutter along the side where they are.
#pragma once

#include "libsim/writers/map_layout.h"

namespace fillside {

/// A strip as long as the thing, with its name in it.
struct EdgeStrip {
  std::string label;
  MapOutline::Kind kind = MapOutline::Kind::window;
  Side side = Side::left;
  int lane = 0;  ///< 0 is next to the map
  Box box;
};

/// Strips for all things that lie wholly outside the map, except tables and props.
std::vector<EdgeStrip> edge_strips(const Map& map, const MapLayout& layout, const Drawing& ruler);
/// The lanes those strips need.
Lanes lanes_of(const std::vector<EdgeStrip>& strips);
void draw_strips(Drawing& drawing, const std::vector<EdgeStrip>& strips);

}  // namespace fillside
