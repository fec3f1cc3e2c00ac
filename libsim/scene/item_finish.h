// What each part of a stand-in is made of, unless its owner says otherwise.
#pragma once

#include <string_view>

#include "libsim/matter/material.h"
#include "libsim/scene/description.h"

namespace fillside {

/// Material of the part with that role ("body", "filling", "glass", "lid") of an item.
Material part_material(const ItemSection& item, std::string_view role);

}  // namespace fillside
