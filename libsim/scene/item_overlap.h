// How deep food and crockery stand in each other, by simple hulls around them.
#pragma once

#include "libsim/scene/item_placing.h"

namespace fillside {

/// The upright box around an item along its own axes; the cylinder around it has half the longer side as its
/// radius.
struct ItemHull {
  Eigen::Vector2d centre, across, along;  ///< unit directions of its sides
  double half_width_m, half_depth_m, low_m, high_m;
};

ItemHull hull_of(const PlacedItem& item);

/// The least of the depths by the cylinders, by the boxes and by height; 0 or less when the hulls are apart.
/// Boxes by their separating axes: Gottschalk, Lin, Manocha, "OBBTree", SIGGRAPH 1996, section 5, in the
/// plane.
double overlap_m(const ItemHull& one, const ItemHull& other);

/// Does the item stand on the other one, or on what stands on it, and so on?
bool stands_on(const Description& description, const ItemSection& item, const ItemSection& below);

}  // namespace fillside
