// Scaling what was measured to the description's anchor.
#pragma once

#include <optional>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/transport/measurement.h"
#include "libsim/view/anchor.h"
#include "libsim/what_if/set_instruments.h"

namespace fillside {

/// Finds the anchor's meter among the instruments and multiplies every measurement so that its mean is the
/// anchor's reading; nothing without an anchor. Light adds up, so that this is the same as sources that shine
/// as many times stronger. Throws SceneError when no light reaches that meter.
std::optional<Anchor> anchor_all(const Description& description, const std::vector<Instrument>& instruments,
                                 std::vector<Measurement>& measurements);

}  // namespace fillside
