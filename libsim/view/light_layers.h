// A picture taken apart by light: the key alone, each other source alone, each board alone, what the food
// itself turns, and the ambient light that is left. Every row (source, via) lies in exactly one layer, so
// that the layers add up to the picture.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "libsim/transport/key.h"
#include "libsim/transport/measurement.h"

namespace fillside {

struct LightLayer {
  std::string name;  ///< "key window", "lamp", "board fill", "food", "ambient"
  Measurement::RowChoice rows;
};

/// key: straight, by its own curtain, or by a diffuser before it. Each other window or lamp: straight or by
/// its own curtain. Each board: all light that it turned last. food: the same of food and props, with what
/// mirrors in them. ambient: the rest, by way of table, walls, floor, ceiling. All of them, in this order,
/// those without light too.
std::vector<LightLayer> light_layers(const Scene& scene, const Key& key);

/// The layer's linear picture, three numbers a pixel.
std::vector<float> pixels_of(const Measurement& picture, const LightLayer& layer);

/// Pictures of one size added one after the other in 32-bit numbers, so that whoever adds the layers of a
/// file in their order gets the whole to the last bit.
std::vector<float> added_up(const std::vector<std::vector<float>>& layers);

}  // namespace fillside
