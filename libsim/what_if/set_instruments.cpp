#include "libsim/what_if/set_instruments.h"

#include "libsim/transport/key.h"

namespace fillside {

std::vector<Instrument> instruments_of(const Description& description, const Scene& scene,
                                       const Direction& to_key) {
  std::vector<Instrument> all;
  auto meters = default_meters(description, scene, to_key);
  auto own = own_meters(description, scene, to_key);
  meters.insert(meters.end(), own.begin(), own.end());
  for (Meter& meter : meters) {
    const bool dome = std::holds_alternative<DomedReceptor>(meter.receiver.kind), there = meter.subject_there;
    all.push_back({std::move(meter), dome ? ReadingKind::dome : ReadingKind::flat, there});
  }
  for (Patch& patch : subject_patches(description, scene, to_key))
    all.push_back({std::move(patch), ReadingKind::patch, true});
  return all;
}

std::vector<Instrument> instruments_of(const Description& description, const Scene& scene) {
  const Key key = find_key(scene, description.set.key, dish_place(scene));
  return instruments_of(description, scene, toward_window(scene, key.emitter));
}

}  // namespace fillside
