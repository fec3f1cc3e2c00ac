// The sets that are held against each other: scene files, and variants of the first of them.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/scene.h"
#include "tools/open_scene.h"

namespace fillside::tools {

struct ComparedSet {
  std::string name;                ///< the scene's short name, or the variant's
  std::vector<std::string> edits;  ///< of the variant, beside --set
  Description description;
  Scene scene;

  /// "no board: board.near.used=false", "soup: Red lentil soup": one line for headings.
  std::string heading() const;
};

/// The scenes in order, then the variants of the first. Throws SceneError with the faults of all of them
/// together.
std::vector<ComparedSet> open_compared(const Arguments& arguments);

}  // namespace fillside::tools
