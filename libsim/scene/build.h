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

/// With what finish food and props are built: their own, or all in clay, to judge the form and the light on
/// it: a matte, neutral grey of 18 %, glass and liquids too. Room, table, boards and cloths stay as they are.
enum class Finishes { own, clay };
inline constexpr double kClayReflectance = 0.18;

/// Puts the set together. The description must have passed check(); OBJ files are read here, relative to the
/// scene file's folder. Throws SceneError with every problem of the OBJ files.
Built build(const Description& description, Finishes finishes = Finishes::own);

}  // namespace fillside
