// One real reading that a whole set is scaled to. A set's proportions are known well, its level badly: nobody
// knows the sky of that minute. One reading with a lux meter or a camera settles it, and all light in the set
// moves by the same stops.
#pragma once

#include <string>

#include "libsim/base/estimate.h"
#include "libsim/base/quantity.h"
#include "libsim/scene/description.h"
#include "libsim/view/reading.h"

namespace fillside {

/// A reading farther than this from what the set says by itself is suspicious: two stops are more than the
/// sky of a given kind varies around its usual level (common practice).
inline constexpr Stops kPlausible = stops(2.0);

struct Anchor {
  std::string meter;
  std::string reading;  ///< "380 lx", "f/5.6, 1/13 s, ISO 100, incident"
  Illuminance wanted;   ///< what the meter is to read
  double factor = 1.0;  ///< all light of the set is multiplied by it

  Stops moved() const;
  bool is_plausible() const;
};

/// The meter an anchor names.
std::string anchor_meter(const AnchorSection& anchor);

/// What a meter of that kind reads when the anchor's settings are right. Incident: E = C N^2 / (S t).
/// Reflected: the card sends L = K N^2 / (S t) = reflectance E / pi. ISO 2720:1974. The anchor says
/// something.
Illuminance anchored_illuminance(const AnchorSection& anchor, ReadingKind kind);

/// The anchor of a set in which that meter reads `unanchored_lx`, which is more than 0.
Anchor anchor_of(const AnchorSection& anchor, ReadingKind kind, double unanchored_lx);

}  // namespace fillside
