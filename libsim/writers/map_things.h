// What stands on the mapped plane: outlines in their places with their names beside them.
#pragma once

#include "libsim/writers/map_layout.h"

namespace fillside {

/// A name to be written beside its thing.
struct ThingLabel {
  std::string text;
  Box box;
};

/// Finds free places for the names of things inside the map, and takes them and the outlines' own places, so
/// that nothing else is written there. A name without any free place is left out.
std::vector<ThingLabel> place_labels(const Map& map, const MapLayout& layout, const Drawing& ruler,
                                     TakenPlaces& taken);
void draw_things(Drawing& drawing, const Map& map, const MapLayout& layout);
void draw_labels(Drawing& drawing, const std::vector<ThingLabel>& labels);

}  // namespace fillside
