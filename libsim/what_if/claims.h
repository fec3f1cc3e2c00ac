// Claims: what a scene says it shows, proved by measuring.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/what_if/effort.h"
#include "libsim/base/estimate.h"

namespace fillside {

enum class Verdict { holds, fails, unknown_figure };

struct ProvedClaim {
  ClaimSection claim;
  Verdict verdict = Verdict::fails;
  std::optional<Estimate> figure;
  std::string unit;  ///< "stops", "lx", "EV", "ratio"
};

/// Measures every claim of the description, those with `without` in a set that lacks that thing. Figures:
///   subject.lit_to_shadow, subject.stops        (on the food; in its empty place when there is none)
///   empty_spot.lit_to_shadow, empty_spot.stops
///   meter.NAME.lx, .key_lx, .fill_lx, .key_to_fill, .ev100     (own meters, "dish up", "food shadow", ...)
///   board.NAME.gain.METER                       (stops that the board adds at a meter)
///   plane.NAME.evenness                         (stops between the lightest and darkest of 12 x 8 cells, food away)
/// A claim holds when the figure lies within its bounds.
std::vector<ProvedClaim> prove_claims(const Description& description, const Effort& effort);

/// The description with the thing of that name left out; unchanged when there is none.
Description without(Description description, const std::string& name);

}  // namespace fillside
