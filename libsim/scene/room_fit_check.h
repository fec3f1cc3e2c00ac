// Does everything stand inside the room, and nothing in the table top?
#pragma once

#include <vector>

#include "libsim/scene/placed_set.h"

namespace fillside {

/// The table, food and props, boards and diffusers through a wall, the floor or the ceiling; the feet of
/// meshes, and meters and map planes with their middle, outside the room.
void check_room_fit(const PlacedSet& set, std::vector<Problem>& problems);

/// Says so when the point lies outside the room. True when it lies inside.
bool check_within(const FaultList& faults, const RoomPlace& room, const Point& point, std::string_view what);

}  // namespace fillside
