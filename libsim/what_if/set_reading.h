// All meters and patches of a set, read to a wanted precision.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/sensor/instruments.h"
#include "libsim/transport/measure.h"
#include "libsim/view/anchor.h"
#include "libsim/view/reading.h"
#include "libsim/what_if/effort.h"
#include "libsim/what_if/set_instruments.h"

namespace fillside {

struct SetReading {
  std::vector<Reading> readings;          ///< meters first, then patches
  std::vector<Measurement> measurements;  ///< the same order
  std::optional<Anchor> anchor;           ///< what all light was scaled to
  Key key;
  std::string key_name;
  std::optional<Estimate> food_lit_to_shadow;  ///< patches lit : shadow, on the food
  std::optional<Estimate>
      empty_lit_to_shadow;     ///< flat meters toward : away from the key, in the dish's empty place
  double reached_stops = 0.0;  ///< widest 95 % half width among all figures
  bool reached = true;         ///< whether that is within the wanted precision
  std::uint64_t samples_per_replicate = 0;
  RefusedSamples refused;

  /// What all light of the set is multiplied by; 1 without an anchor.
  double light_factor() const { return anchor ? anchor->factor : 1.0; }
  const Reading* named(std::string_view name) const;
  /// food_lit_to_shadow where there is food, else empty_lit_to_shadow.
  std::optional<Estimate> subject_lit_to_shadow() const;
};

/// Reads the five meters in the dish's empty place, the description's own meters and the subject's patches.
/// With an anchor, all of it is scaled so that the anchor's meter reads what the anchor says.
SetReading read_set(const Description& description, const Scene& scene, const Effort& effort,
                    const EffortProgress& progress = {});

/// What instruments, once measured (in their order), say of the set. No anchor is looked at.
SetReading set_reading_of(const Description& description, const Scene& scene,
                          const std::vector<Instrument>& instruments, std::vector<Measurement> measurements);

}  // namespace fillside
