// Claims: what a scene says it shows, proved by measuring.
#pragma once

#include <string>
#include <vector>

#include "libsim/base/estimate.h"
#include "libsim/scene/description.h"
#include "libsim/what_if/effort.h"

namespace fillside {

struct ProvedClaim {
  ClaimSection claim;
  bool holds = false;  ///< the figure lies within its bounds; never when there is no light to form it from
  Estimate figure;
  std::string unit;  ///< "stops", "lx", "EV", "ratio"
};

/// Measures every claim of the description, those with `without` in a set that lacks that thing, those with
/// `with` in one that has it; the figures are those of figure_names.h. Throws SceneError, before anything is
/// measured, with every claim whose figure the set does not have, naming the nearest or those that there are.
std::vector<ProvedClaim> prove_claims(const Description& description, const Effort& effort,
                                      const EffortProgress& progress = {});

/// The description with the thing of that name left out, or put in; unchanged when there is none.
Description without(Description description, const std::string& name);
Description with(Description description, const std::string& name);

}  // namespace fillside
