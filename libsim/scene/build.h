// From a checked description to the set that rays meet.
#pragma once

#include <vector>

#include "libsim/base/problem.h"
#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"

namespace fillside {

struct Built {
  Scene scene;
  std::vector<Problem> warnings;  ///< what loading OBJ files had to say
};

/// Puts the set together. The description must have passed check(); OBJ files are read here, relative to the
/// scene file's folder. Throws SceneError with every problem of the OBJ files.
Built build(const Description& description);

}  // namespace fillside
