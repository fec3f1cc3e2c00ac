// A look over the set before the light is measured, as an assistant would take it: what is in the picture or
// in the light by mistake, what floats, what is too near or too high, and what needs care. Nothing here stops
// a set from being calculated; what does is refused by the scene's own checks.
#pragma once

#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/what_if/effort.h"

namespace fillside {

struct SetRemarks {
  std::vector<Problem> warnings;  ///< probably not meant; each with what to do
  std::vector<Problem> cautions;  ///< may be meant, and can hurt someone
};

/// Each at its key's place in the file, sorted by position. `effort` gives seed and threads; the time is
/// short and bounded (mirror images are looked for in a picture 240 pixels wide).
SetRemarks look_over(const Description& description, const Scene& scene, const Effort& effort);

}  // namespace fillside
