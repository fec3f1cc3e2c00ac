// What follows from a card's measures and helps the hand: the other way to measure a place, the height of an
// upper edge, where the lens is over the floor. Remarks are never read back.
#pragma once

#include <string>
#include <string_view>

#include "libsim/scene/placed_set.h"
#include "libsim/what_if/set_card.h"

namespace fillside {

/// The remark on the line of that label; empty when there is nothing to add.
std::string remark_on(const PlacedSet& set, const WindowSection& window, std::string_view label);
std::string remark_on(const PlacedSet& set, const TableSection& table, std::string_view label);
std::string remark_on(const PlacedSet& set, const ItemSection& item, std::string_view label);
std::string remark_on(const PlacedSet& set, const BoardSection& board, std::string_view label);
std::string remark_on(const PlacedSet& set, const DiffuserSection& cloth, std::string_view label);
std::string remark_on(const PlacedSet& set, const LampSection& lamp, std::string_view label);
std::string remark_on(const PlacedSet& set, const CameraSection& camera, std::string_view label);
template <class S>
std::string remark_on(const PlacedSet&, const S&, std::string_view) {
  return {};
}

}  // namespace fillside
