// Which way to move the camera or the dish to lose a mirror image: found by moving them step by step and
// looking, by the geometry of mirror directions alone, where the window then lies mirrored. No light is
// measured.
#pragma once

#include <string>
#include <vector>

#include "libsim/scene/description.h"
#include "libsim/scene/scene.h"
#include "libsim/view/glare.h"

namespace fillside {

enum class GlareMoveKind {
  raise_camera,
  lower_camera,
  camera_clockwise,
  camera_anticlockwise,
  nearer,
  farther
};

/// One thing moved, all else left where it is. The camera stays as far from what it looks at and goes on
/// looking at it; the dish goes straight toward or away from the window, and table, boards and camera with
/// it.
struct GlareMove {
  GlareMoveKind kind;
  Length way;               ///< how far the camera goes along its arc, or the dish
  double image_left = 0.0;  ///< share of the part that the image still covers
  std::string text;         ///< "lower the camera by 21 cm, to 30 deg over the table"
};

/// Less of the part than this and the image counts as gone.
inline constexpr double kGone = 0.01;

/// The smallest move of each kind after which the image is gone, the least way first; kinds that do not get
/// there (within 85 degrees up, 5 over the table, a quarter round, 60 cm) or would stand in something are
/// left out, so that the list may be empty. A move that hides the thing itself does not count.
std::vector<GlareMove> moves_that_clear(const Description& description, const Scene& scene,
                                        const Glare& glare, int threads = 0);

}  // namespace fillside
