#include "libsim/view/light_layers.h"

#include <cassert>

#include "libsim/transport/attribution.h"

namespace fillside {
namespace {

/// Names of layers by row: each row is given the one place where it belongs.
class Division {
 public:
  Division(const Scene& scene, const Key& key) : scene_(scene), key_(key) {}

  std::string of(std::size_t source, std::size_t via) const {
    if (key_.has(source, via)) return key_layer();
    const std::size_t emitter = key_.sources[source].emitter;
    if (via == kStraight || is_own_curtain(emitter, via)) return source_layer(emitter);
    const Object& object = scene_.objects()[via - 1];
    if (object.kind == ObjectKind::board) return board_layer(object);
    return object.kind == ObjectKind::food || object.kind == ObjectKind::prop ? "food" : "ambient";
  }
  /// Every name that `of` can give, in the order of the layers.
  std::vector<std::string> all() const {
    std::vector<std::string> names{key_layer()};
    for (std::size_t emitter = 0; emitter < scene_.emitters().size(); ++emitter)
      if (emitter != key_.emitter) names.push_back(source_layer(emitter));
    for (const Object& object : scene_.objects())
      if (object.kind == ObjectKind::board) names.push_back(board_layer(object));
    names.insert(names.end(), {"food", "ambient"});
    return names;
  }

 private:
  std::string key_layer() const { return "key " + scene_.emitters()[key_.emitter].name; }
  std::string source_layer(std::size_t emitter) const { return "source " + scene_.emitters()[emitter].name; }
  static std::string board_layer(const Object& object) { return "board " + object.name; }
  bool is_own_curtain(std::size_t emitter, std::size_t via) const {
    const std::uint16_t curtain = scene_.emitters()[emitter].curtain_object;
    return curtain != 0 && via == via_of_object(curtain);
  }

  const Scene& scene_;
  const Key& key_;
};

}  // namespace

std::vector<LightLayer> light_layers(const Scene& scene, const Key& key) {
  const Division division(scene, key);
  const std::size_t vias = scene.objects().size() + 1;
  std::vector<std::string> layer_of_row;
  for (std::size_t source = 0; source < scene.sources().size(); ++source)
    for (std::size_t via = 0; via < vias; ++via) layer_of_row.push_back(division.of(source, via));
  std::vector<LightLayer> layers;
  if (scene.sources().empty()) return layers;
  for (const std::string& name : division.all())
    layers.push_back({name, [layer_of_row, vias, name](std::size_t source, std::size_t via) {
                        return layer_of_row[source * vias + via] == name;
                      }});
  return layers;
}

std::vector<float> pixels_of(const Measurement& picture, const LightLayer& layer) {
  std::vector<float> pixels;
  pixels.reserve(3 * picture.element_count());
  for (std::size_t pixel = 0; pixel < picture.element_count(); ++pixel)
    for (const double channel : picture.colour(pixel, layer.rows))
      pixels.push_back(static_cast<float>(channel));
  return pixels;
}

std::vector<float> added_up(const std::vector<std::vector<float>>& layers) {
  if (layers.empty()) return {};
  std::vector<float> sum = layers.front();
  for (std::size_t layer = 1; layer < layers.size(); ++layer) {
    assert(layers[layer].size() == sum.size());
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += layers[layer][i];
  }
  return sum;
}

}  // namespace fillside
