#include "libsim/what_if/set_instruments.h"

#include <algorithm>

#include "libsim/transport/key.h"

namespace fillside {

namespace {

std::vector<Instrument> instruments_among(const std::vector<std::string>* names,
                                          const Description& description, const Scene& scene,
                                          const Direction& to_key) {
  std::vector<Instrument> all;
  auto meters = default_meters(description, scene, to_key);
  auto own = own_meters(description, scene, to_key);
  meters.insert(meters.end(), own.begin(), own.end());
  for (Meter& meter : meters) {
    if (names && std::ranges::find(*names, meter.name) == names->end()) continue;
    const bool dome = std::holds_alternative<DomedReceptor>(meter.receiver.kind), there = meter.subject_there;
    all.push_back({std::move(meter), dome ? ReadingKind::dome : ReadingKind::flat, there});
  }
  for (Patch& patch : subject_patches(description, scene, to_key, names))
    all.push_back({std::move(patch), ReadingKind::patch, true});
  return all;
}

Direction toward_its_key(const Description& description, const Scene& scene) {
  const Key key = find_key(scene, description.set.key, dish_place(scene));
  return toward_window(scene, key.emitter);
}

}  // namespace

std::vector<Instrument> instruments_of(const Description& description, const Scene& scene,
                                       const Direction& to_key) {
  return instruments_among(nullptr, description, scene, to_key);
}

std::vector<Instrument> instruments_of(const Description& description, const Scene& scene) {
  return instruments_among(nullptr, description, scene, toward_its_key(description, scene));
}

std::vector<Instrument> instruments_named(const std::vector<std::string>& names,
                                          const Description& description, const Scene& scene) {
  return instruments_among(&names, description, scene, toward_its_key(description, scene));
}

}  // namespace fillside
