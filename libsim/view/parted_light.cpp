#include "libsim/view/parted_light.h"

#include <algorithm>
#include <cassert>

#include "libsim/view/light_layers.h"

namespace fillside {
namespace {

/// The key's layer and those of other sources hold what comes straight.
std::string way_of(const LightLayer& layer) {
  return layer.name.starts_with("key ") || layer.name.starts_with("source ") ? "straight" : layer.name;
}

std::size_t index_in(std::vector<std::string>& names, const std::string& name) {
  const auto found = std::ranges::find(names, name);
  if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
  names.push_back(name);
  return names.size() - 1;
}

bool has_light(const std::vector<float>& pixels) {
  return std::ranges::any_of(pixels, [](float value) { return value > 0.0f; });
}

/// The key's emitter first, then the others.
std::vector<std::size_t> emitters_in_order(const Scene& scene, const Key& key) {
  std::vector<std::size_t> order;
  for (std::size_t emitter = 0; emitter < scene.emitters().size(); ++emitter) order.push_back(emitter);
  std::stable_partition(order.begin(), order.end(),
                        [&](std::size_t emitter) { return emitter == key.emitter; });
  return order;
}

}  // namespace

PartedLight parted_light(const Scene& scene, const Key& key, const Measurement& picture) {
  PartedLight parted{picture.columns(), picture.rows(), {}, {}, {}};
  const std::vector<LightLayer> layers = light_layers(scene, key);
  const auto order = emitters_in_order(scene, key);
  for (const LightLayer& layer : layers)  // ways outermost, so that they are named in the layers' order
    for (const std::size_t emitter : order) {
      const LightLayer part{"", [&](std::size_t source, std::size_t via) {
                              return scene.sources()[source].emitter == emitter && layer.rows(source, via);
                            }};
      std::vector<float> light = pixels_of(picture, part);
      if (!has_light(light)) continue;
      const std::size_t source = index_in(parted.sources, scene.emitters()[emitter].name);
      parted.parts.push_back({source, index_in(parted.ways, way_of(layer)), std::move(light)});
    }
  return parted;
}

LightMix even_mix(const PartedLight& light) {
  return {std::vector<double>(light.sources.size(), 1.0), std::vector<double>(light.ways.size(), 1.0)};
}

std::vector<Rgb> mixed(const PartedLight& light, const LightMix& mix) {
  assert(mix.sources.size() == light.sources.size() && mix.ways.size() == light.ways.size());
  std::vector<Rgb> pixels(static_cast<std::size_t>(light.columns) * static_cast<std::size_t>(light.rows),
                          grey(0.0));
  for (const LightPart& part : light.parts) {
    const double gain = mix.sources[part.source] * mix.ways[part.way];
    if (gain == 0.0) continue;
    for (std::size_t pixel = 0; pixel < pixels.size(); ++pixel)
      pixels[pixel] +=
          gain * Rgb(part.light[3 * pixel], part.light[3 * pixel + 1], part.light[3 * pixel + 2]);
  }
  return pixels;
}

}  // namespace fillside
