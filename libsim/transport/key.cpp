#include "libsim/transport/key.h"

#include <cmath>

#include "libsim/transport/attribution.h"
#include "libsim/transport/measure.h"

namespace fillside {
namespace {

/// True when a cloth's rectangle crosses a line from the dish to the emitter: to its middle or to the middle
/// of an edge.
bool stands_between(const Target& cloth, const Rectangle& emitter, const Point& dish) {
  for (const auto& [u, v] : {std::pair{0.0, 0.0}, {-1.0, 0.0}, {1.0, 0.0}, {0.0, -1.0}, {0.0, 1.0}}) {
    const Eigen::Vector3d line = emitter.at(u, v) - dish;
    const Direction normal = cloth.rectangle.normal();
    const double across = line.dot(normal);
    if (std::abs(across) < 1e-9) continue;
    const double share = (cloth.rectangle.centre - dish).dot(normal) / across;
    if (share <= 0.0 || share >= 1.0) continue;
    if (cloth.rectangle.coordinates_of(dish + share * line).cwiseAbs().maxCoeff() <= 1.0) return true;
  }
  return false;
}

Key key_of(const Scene& scene, std::size_t emitter, const Point& dish) {
  Key key{emitter, scene.sources(), std::vector<bool>(scene.objects().size() + 1, false)};
  key.vias[kStraight] = true;
  if (const std::uint16_t curtain = scene.emitters()[emitter].curtain_object; curtain != 0)
    key.vias[via_of_object(curtain)] = true;
  for (const Target& target : scene.targets()) {
    const std::uint16_t object = scene.surfaces()[target.surface].object;
    if (scene.objects()[object].kind == ObjectKind::diffuser &&
        stands_between(target, shining_rectangle(scene.emitters()[emitter]), dish))
      key.vias[via_of_object(object)] = true;
  }
  return key;
}

double light_all_round(const Scene& scene, const Point& dish, const Key& key) {
  const Budget budget{.samples = 256, .replicates = 1, .threads = 1};
  double sum = 0.0;
  // Two domes back to back respond alike to every direction: (1 + cos) / 2 + (1 - cos) / 2 = 1.
  for (const double side : {1.0, -1.0}) {
    const Meter dome{"key finder", {dish, {0.0, 0.0, side}, DomedReceptor{}}, false};
    sum += measure(scene, dome, budget)
               .sum(0, [&](std::size_t s, std::size_t v) { return key.has(s, v); })
               .value();
  }
  return sum;
}

}  // namespace

Key find_key(const Scene& scene, const std::string& name, const Point& dish) {
  for (std::size_t e = 0; e < scene.emitters().size(); ++e)
    if (scene.emitters()[e].name == name) return key_of(scene, e, dish);
  if (scene.emitters().size() == 1) return key_of(scene, 0, dish);
  Key strongest{0, scene.sources(), std::vector<bool>(scene.objects().size() + 1, false)};
  double most = -1.0;
  for (std::size_t e = 0; e < scene.emitters().size(); ++e) {
    Key key = key_of(scene, e, dish);
    if (const double light = light_all_round(scene, dish, key); light > most) {
      most = light;
      strongest = std::move(key);
    }
  }
  return strongest;
}

}  // namespace fillside
