// The instruments that a set is read with: meters in the dish's place, its own meters, patches of its
// subject.
#pragma once

#include <vector>

#include "libsim/scene/description.h"
#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "libsim/view/reading.h"

namespace fillside {

struct Instrument {
  Sensor sensor;
  ReadingKind kind;
  bool subject_there;
};

/// Meters first, then patches; `to_key` is what "lit" and "toward the window" mean.
std::vector<Instrument> instruments_of(const Description& description, const Scene& scene,
                                       const Direction& to_key);
/// The same toward the set's own key.
std::vector<Instrument> instruments_of(const Description& description, const Scene& scene);
/// Of these only those of the names given.
std::vector<Instrument> instruments_named(const std::vector<std::string>& names,
                                          const Description& description, const Scene& scene);

}  // namespace fillside
