#include "libsim/what_if/obstacles.h"

#include <algorithm>

#include "libsim/scene/wording.h"
#include "libsim/sensor/framing.h"
#include "libsim/sensor/instruments.h"
#include "libsim/transport/key.h"

namespace fillside {
namespace {

bool is_one_of(const std::string& name, const std::vector<std::string>& names) {
  return std::ranges::find(names, name) != names.end();
}

}  // namespace

std::optional<std::string> in_the_picture(const Description& description, const Scene& scene,
                                          const std::vector<std::string>& names) {
  for (const FramedThing& thing : framed_things(scene, camera_of(description, scene)))
    if (thing.in_frame != InFrame::outside && thing.kind != ObjectKind::food && is_one_of(thing.name, names))
      return in_quotes(thing.name) + " is in the picture";
  return std::nullopt;
}

double share_of_key_hidden_by(const Description& description, const Scene& scene, const std::string& name) {
  constexpr int kAcross = 16;
  const Point dish = dish_place(scene);
  const Key key = find_key(scene, description.set.key, dish);
  const Rectangle rectangle = rectangle_of(scene.emitters()[key.emitter]);
  int hidden = 0;
  for (int column = 0; column < kAcross; ++column)
    for (int row = 0; row < kAcross; ++row) {
      const Point goal =
          rectangle.at((2.0 * column + 1.0) / kAcross - 1.0, (2.0 * row + 1.0) / kAcross - 1.0);
      const Direction way = (goal - dish).normalized();
      const auto hit = scene.caster().first_hit(shadow_ray(dish, way, goal), kWithoutSubject);
      if (hit) hidden += scene.objects()[scene.surfaces()[hit->surface].object].name == name;
    }
  return static_cast<double>(hidden) / (kAcross * kAcross);
}

std::optional<std::string> in_the_keys_way(const Description& description, const Scene& scene,
                                           const std::vector<std::string>& names) {
  constexpr double kTooMuch = 0.02;
  if (scene.emitters().empty()) return std::nullopt;
  for (const std::string& name : names)
    if (share_of_key_hidden_by(description, scene, name) > kTooMuch)
      return in_quotes(name) + " stands in the key's way to the dish";
  return std::nullopt;
}

}  // namespace fillside
