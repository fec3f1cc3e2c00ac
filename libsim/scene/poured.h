// A clear liquid in glass, porcelain or a jar. Stand-ins keep a hair's breadth of air between what holds and
// what is held; a liquid has none, so the faces on either side of that gap become one: glass against liquid,
// or nothing at all against what is opaque. The liquid's top is a mirror lying flat, and its depth colours
// what lies below.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "libsim/geometry/item.h"
#include "libsim/matter/material.h"
#include "libsim/scene/description.h"

namespace fillside {

struct PouredPart {
  std::string role;  ///< the stand-in's part, "filling" for the liquid
  Mesh mesh;
  Material material;
  std::vector<double> second = {};  ///< as of the stand-in's part
};

/// Kinds whose filling may be a clear liquid.
bool holds_liquid(std::string_view kind);

/// The parts of an item with its liquid in it, each with its material. The item stands in the set.
std::vector<PouredPart> poured(const ItemSection& section, const Item& item);

}  // namespace fillside
