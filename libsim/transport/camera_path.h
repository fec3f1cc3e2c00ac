// From the lens to the first surface that scatters widely: panes and mirrors on the way are followed. What
// shines and scatters both, a glaze, is gathered for its body and followed for its coat.
#pragma once

#include "libsim/base/space.h"
#include "libsim/transport/gather.h"

namespace fillside {

/// Adds the radiance that arrives along the ray, by rows, to the ledger.
void add_radiance_along(Gatherer& gatherer, const SampleNumbers& numbers, int kept_replicate, const Ray& ray,
                        Ledger& ledger);

}  // namespace fillside
