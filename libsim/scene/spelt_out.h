// A set with what it leaves out said in numbers: stock sizes, the catalogue's shares, usual distances and
// levels.
#pragma once

#include "libsim/scene/description.h"

namespace fillside {

/// The same set, built to the same light, with numbers in place of what its owner named or left out: sizes of
/// boards, diffusers, openings and food; reflectances of boards, table and plain food; shares of cloths and
/// panes; the first window's distance; the levels of sky and sun. What
/// stands as several numbers (a stand-in's own surfaces, a picture) stays as it is.
Description spelt_out(const Description& description);

}  // namespace fillside
