// What each part of a stand-in is made of, unless its owner says otherwise.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "libsim/matter/material.h"
#include "libsim/scene/description.h"

namespace fillside {

/// The parts of a kind that may be given a surface: all but its glass and ice.
std::vector<std::string> surfaced_parts(std::string_view kind);

/// Material of the part with that role (one of part_roles()) of an item: what `parts` says, else its finish
/// for the body or lid, its filling's for the filling, else the usual one.
Material part_material(const ItemSection& item, std::string_view role);

/// The catalogue's name of what lies in places on that part, such as flour on a crust. Nothing where there is
/// no such thing or the owner says what the part is made of.
std::optional<std::string_view> second_surface(const ItemSection& item, std::string_view role);

}  // namespace fillside
